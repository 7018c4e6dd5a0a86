// Package structure holds how the volumes of a product lie: density, crowding,
// grains.
//
// Glossary: the internal fraction (crowding) is oil over oil and liquid polar
// phase, by volume; a grain is coarser than 20 µm and is filler, not internal
// phase; fine powder may sit in either liquid.
package structure
