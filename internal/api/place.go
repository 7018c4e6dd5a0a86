package api

import "strings"

// The margin is as wide as about 37 letters of the widest face the page may
// fall back to; a row is 32 px, a line of a note 20 px.
const (
	letters    = 37
	rowPixels  = 32
	linePixels = 20
	gapPixels  = 10
)

// leader is the thin line from a row to its note: straight when they are
// level, bent when the note had to move.
type leader struct {
	From, To int // rows of the grid, From the upper
	Path     string
}

// furthest is how many rows a leader may bend over; a note further off says
// its line in words.
const furthest = 5

func leaderOf(line, note int) *leader {
	switch d := note - line; {
	case d == 0:
		return &leader{line, line, ""}
	case d > 0 && d <= furthest:
		return &leader{line, note, "M0 0H14L42 100H52"}
	case d < 0 && -d <= furthest:
		return &leader{note, line, "M0 100H14L42 0H52"}
	}
	return nil
}

// block is a note being placed: where it wants to stand, how many rows it
// takes, where it ends up.
type block struct {
	note               *note
	wants, rows, start int
}

// place finds a grid row for every note: level with its line, and where two
// would overlap both move apart by the least total distance. A note never
// moves the table.
func place(t *table) {
	var blocks []*block
	add := func(notes []note, row int) {
		for i := range notes {
			blocks = append(blocks, &block{note: &notes[i], wants: row, rows: rowsOf(&notes[i])})
		}
	}
	row := 1
	add(t.Whole, row)
	for p := range t.Phases {
		for l := range t.Phases[p].Lines {
			row++
			add(t.Phases[p].Lines[l].Notes, row)
		}
		row++ // the phase's sum
	}
	settle(blocks)
	for i, b := range blocks {
		b.note.Start, b.note.Span = b.start, b.rows
		// Only the first note of a line gets a leader: a fan of them says less.
		if b.note.Line != "" && (i == 0 || blocks[i-1].wants != b.wants) {
			b.note.Leader = leaderOf(b.wants, b.start)
		}
		if b.note.Leader != nil {
			b.note.Line = ""
		}
	}
}

// rowsOf estimates how many rows a note takes.
func rowsOf(n *note) int {
	lines, used := 1, 0
	text := strings.Join([]string{"xx", n.Severity.Word, n.Line, n.Text, n.Help, n.Needs, n.Also, n.Rule}, " ")
	if n.Needs != "" {
		text += " Would settle it:"
	}
	for _, word := range strings.Fields(text) {
		w := len([]rune(word))
		if used > 0 && used+1+w > letters {
			lines, used = lines+1, 0
		}
		used += 1 + w
	}
	return (lines*linePixels + gapPixels + rowPixels - 1) / rowPixels
}

// settle stacks blocks that overlap into clusters and stands each cluster where
// its blocks are, on the whole, nearest to where they want to be. Blocks come
// in the order of what they want.
func settle(blocks []*block) {
	type cluster struct {
		first, count, rows int
		wish               int // sum over blocks of (wants − offset in the cluster)
	}
	at := func(c cluster) int { return max(1, (c.wish+c.count/2)/c.count) }
	var stack []cluster
	for i, b := range blocks {
		stack = append(stack, cluster{i, 1, b.rows, b.wants})
		for len(stack) > 1 {
			low, high := stack[len(stack)-1], stack[len(stack)-2]
			if at(high)+high.rows <= at(low) {
				break
			}
			high.wish += low.wish - low.count*high.rows
			high.count += low.count
			high.rows += low.rows
			stack = append(stack[:len(stack)-2], high)
		}
	}
	for _, c := range stack {
		row := at(c)
		for i := c.first; i < c.first+c.count; i++ {
			blocks[i].start = row
			row += blocks[i].rows
		}
	}
}
