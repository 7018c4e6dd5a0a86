package library

import (
	"sort"
	"strings"

	"levigate"
	"levigate/internal/fold"
)

// name is one name a near miss may be meant for, and what it finds.
type name struct {
	text, key string
	words     []string
	finds     *levigate.Material
}

func named(text string, finds *levigate.Material) name {
	key := fold.String(text)
	return name{text, key, words(key), finds}
}

func words(key string) []string {
	return strings.FieldsFunc(key, func(r rune) bool { return strings.ContainsRune(" /()-,%", r) })
}

const (
	mostNames = 3
	// nearEnough is how alike a name must be to be worth suggesting: two words of
	// three, or half the letters. Below it a suggestion is noise.
	nearEnough = 0.55
	// bought puts what can be bought before a bare substance just as alike.
	bought = 0.05
)

// nearest lists the names most like a folded name, best first, each finding
// something else; names that are equally like stand in alphabetical order.
func (l *Library) nearest(key string, own []*levigate.Material) []string {
	if key == "" || len(key) > 2*maxName {
		return nil // a paragraph is no slip of the finger
	}
	type scored struct {
		name
		score float64
	}
	var found []scored
	asked := words(key)
	try := func(n name) {
		s := likeness(key, asked, n)
		if n.finds.Origin != levigate.Pure {
			s += bought
		}
		if s >= nearEnough {
			found = append(found, scored{n, s})
		}
	}
	for _, m := range own {
		try(named(m.Name, m))
	}
	for _, n := range l.names {
		try(n)
	}
	for _, n := range embedded().names {
		try(n)
	}
	sort.SliceStable(found, func(i, j int) bool {
		if found[i].score != found[j].score {
			return found[i].score > found[j].score
		}
		return found[i].text < found[j].text
	})
	var out []string
	given, said := map[*levigate.Material]bool{}, map[string]bool{}
	for _, f := range found {
		if len(out) == mostNames {
			break
		}
		if !given[f.finds] && !said[f.key] {
			given[f.finds], said[f.key] = true, true
			out = append(out, f.text)
		}
	}
	return out
}

// likeness is 1 for equal names: the better of how few letters differ, which
// finds a slip of the finger, and how many of the words asked for are there,
// which finds a name written short or in another order.
func likeness(key string, asked []string, n name) float64 {
	letters := alike(key, n.key)
	if len(asked) == 0 {
		return letters
	}
	sum := 0.0
	for _, a := range asked {
		best := 0.0
		for _, w := range n.words {
			best = max(best, sameWord(a, w))
		}
		sum += best
	}
	// A name with fewer words besides is the likelier one.
	share := sum / float64(len(asked))
	extra := sum / float64(max(len(n.words), len(asked)))
	return max(letters, 0.8*share+0.15*extra+0.05*letters)
}

// sameWord is how far one word stands for another: "sunflow" for "sunflower",
// "bentonit" for "bentonite".
func sameWord(a, w string) float64 {
	if a == w {
		return 1
	}
	if len(a) >= 3 && strings.HasPrefix(w, a) {
		return 0.9
	}
	if s := alike(a, w); s >= 0.7 {
		return s
	}
	return 0
}

// alike is one less the share of letters to change, insert, drop or swap with
// the next to turn a into b (optimal string alignment). Names whose lengths
// alone rule them out cost nothing.
func alike(a, b string) float64 {
	longest := max(len(a), len(b))
	if longest == 0 || float64(min(len(a), len(b)))/float64(longest) < nearEnough || longest > maxName {
		return 0
	}
	var rows [3][maxName + 1]uint8 // no distance is above maxName
	before, last, now := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		last[j] = uint8(j)
	}
	for i := 1; i <= len(a); i++ {
		now[0] = uint8(i)
		for j := 1; j <= len(b); j++ {
			change := uint8(1)
			if a[i-1] == b[j-1] {
				change = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last, now = last, now, before
	}
	return 1 - float64(last[len(b)])/float64(longest)
}

// maxName is the longest folded name compared letter by letter, in bytes.
const maxName = 96
