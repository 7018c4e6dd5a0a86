package program

import (
	"cmp"
	"slices"
	"strings"
)

// nearest lists up to three names close to what was typed, best first: those
// it is the beginning or a part of, then those a few slips away.
func nearest(typed string, names []string) []string {
	type near struct {
		name string
		far  int
	}
	typed = strings.ToLower(typed)
	var found []near
	for _, n := range names {
		low := strings.ToLower(n)
		// The last part of a dotted name is what people remember.
		far := min(slips(typed, low), slips(typed, low[strings.LastIndexAny(low, "./")+1:]))
		if typed != "" && strings.Contains(low, typed) {
			far = 0
		}
		if far <= max(2, len(typed)/3) {
			found = append(found, near{n, far})
		}
	}
	slices.SortFunc(found, func(a, b near) int {
		return cmp.Or(cmp.Compare(a.far, b.far), cmp.Compare(len(a.name), len(b.name)), strings.Compare(a.name, b.name))
	})
	var out []string
	for _, n := range found[:min(3, len(found))] {
		out = append(out, n.name)
	}
	return out
}

// slips counts the letters to add, drop or change to turn a into b.
func slips(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := corner
			if a[i] != b[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// meant is help for a name that is not known.
func meant(typed string, names []string, otherwise string) string {
	if near := nearest(typed, names); len(near) > 0 {
		return "did you mean " + strings.Join(near, ", ") + "?"
	}
	return otherwise
}
