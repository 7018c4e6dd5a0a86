package api

// The margin is as wide as about 33 letters of its face; a row is 32 px, a line
// of a note 20 px, with 8 px between notes.
const (
	letters    = 33
	rowPixels  = 32
	linePixels = 20
	gapPixels  = 12
)

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
	for _, b := range blocks {
		b.note.Start, b.note.Span = b.start, b.rows
		b.note.Rise = 2 * (b.start - b.wants)
	}
}

// rowsOf estimates how many rows a note takes.
func rowsOf(n *note) int {
	lines := 0
	for _, text := range []string{n.Severity.Word + "  " + n.Text, n.Help, n.Needs, n.Also} {
		if text != "" {
			lines += (len([]rune(text)) + letters - 1) / letters
		}
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
