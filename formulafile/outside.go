package formulafile

import "levigate"

// What follows is for readers of other files that people keep by hand (a price
// list), so that one slip is told in the same words everywhere.

// Packed names the kind of file that some bytes at its beginning betray; empty
// for text.
func Packed(data []byte) string { return packed(data) }

// NotUTF8 finds the first byte that is not UTF-8; ok when there is none.
func NotUTF8(data []byte) (at levigate.Place, b byte, ok bool) { return notUTF8(data) }

// Hidden names a character that has no place in what a person writes: controls,
// and those that are not seen; empty for all others.
func Hidden(c rune) string { return hidden(c) }

// NearestWord is the known word closest to one that is not known; empty when
// none is near.
func NearestWord(word string, known []string) string { return nearestWord(word, known) }
