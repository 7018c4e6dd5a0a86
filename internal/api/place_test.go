package api

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Wherever notes want to stand, none overlaps another, none stands above the
// table, and their order is the order of their lines.
func TestNotesNeverOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wants := rapid.SliceOfN(rapid.IntRange(1, 60), 0, 30).Draw(t, "wants")
		slices.Sort(wants)
		var blocks []*block
		for _, w := range wants {
			blocks = append(blocks, &block{note: &note{}, wants: w, rows: rapid.IntRange(1, 9).Draw(t, "rows")})
		}
		settle(blocks)
		end := 1
		for i, b := range blocks {
			if b.start < end {
				t.Fatalf("note %d starts at %d, the one before ends at %d", i, b.start, end)
			}
			end = b.start + b.rows
		}
	})
}

// A note alone stands level with its line; two on one line share the shift.
func TestNotesStandNearTheirLines(t *testing.T) {
	alone := []*block{{note: &note{}, wants: 7, rows: 3}, {note: &note{}, wants: 20, rows: 3}}
	settle(alone)
	if alone[0].start != 7 || alone[1].start != 20 {
		t.Errorf("notes with room moved to %d and %d", alone[0].start, alone[1].start)
	}
	pair := []*block{{note: &note{}, wants: 10, rows: 4}, {note: &note{}, wants: 10, rows: 4}}
	settle(pair)
	if pair[0].start != 8 || pair[1].start != 12 {
		t.Errorf("two notes on line 10 stand at %d and %d, want 8 and 12", pair[0].start, pair[1].start)
	}
}

func TestNotesSpreadOverTheirLines(t *testing.T) {
	line := map[int][]note{}
	spread(line, []note{{Rule: "many"}, {Rule: "one"}, {Rule: "other"}}, [][]int{{2, 5, 8}, {2}, {5}})
	if len(line[2]) != 1 || len(line[5]) != 1 || len(line[8]) != 1 {
		t.Fatalf("notes crowd: %v", line)
	}
	if n := line[8][0]; n.Rule != "many" || n.Also != "Also lines 3, 6." {
		t.Errorf("got %+v", n)
	}
}
