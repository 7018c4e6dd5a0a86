// Package work makes figures that show their working.
//
// A Figure is a value with its unit, a 90 % interval, the named causes of that
// interval, the method it came from and the evidence it rests on. A Method is
// declared once (title, text, symbols with ranges, sources, checks) and used by
// the calculation, the working, the documentation and its own proof
// (worktest). A Recorder collects the steps of a calculation when someone
// wants to see them; it is nil, and free, when nobody does.
//
// Glossary: a cause is one uncertain thing with a stable key and a 90 % range;
// a move is what one cause does to one figure; a check is a value someone else
// vouches for.
package work
