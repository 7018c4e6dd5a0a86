package formulafile

import "levigate"

// Read reads a formula file. The name is the file's, for messages. With any
// problem the formula is nil: half a formula must not be mistaken for one.
// The problems are sorted by place and each has one.
func Read(name string, data []byte) (*levigate.Formula, []levigate.Problem) {
	r := &reader{}
	f := r.file(name, data)
	if problems := r.sorted(); len(problems) > 0 {
		return nil, problems
	}
	return f, nil
}

// file takes the bytes through the steps, stopping where a step found faults
// that would make the next one talk nonsense.
func (r *reader) file(name string, data []byte) *levigate.Formula {
	text := r.guard(data)
	if r.failed() {
		return nil
	}
	tokens := r.tokens(text)
	if r.failed() {
		return nil
	}
	root := r.parse(name, tokens)
	if r.failed() {
		return nil
	}
	return r.formula(root)
}
