package library

import folded "levigate/internal/fold"

// fold is the form two names are compared in.
func fold(s string) string { return folded.String(s) }

func appendFolded(dst []byte, s string) []byte { return folded.Append(dst, s) }
