package wire

// Check is a formula check of a document being written: what could be read of
// it, what could not, and what the check says, by the ids of the document's
// rows.
type Check struct {
	Revision int64  `json:"revision"`
	Total    string `json:"total"` // % of all lines that can be read
	Over     string `json:"over"`  // % above 100; empty when it is not
	QS       *QS    `json:"qs"`    // the line that fills up; null without one
	// Rows[i] is the row of the assessment's line i+1.
	Rows     []string             `json:"rows"`
	Answer   string               `json:"answer"` // the water answer in a sentence
	Problems []CellProblem        `json:"problems"`
	Lines    map[string]LineShown `json:"lines"` // by row
	Strip    []string             `json:"strip"` // figures for the head of the sheet
	// Limits says to which activity each room for water is counted, by figure.
	Limits     map[string]string `json:"limits"`
	Assessment Assessment        `json:"assessment"`
	Margin     []Note            `json:"margin"`
	Working    *Step             `json:"working"` // of the figure asked for; null when none was
	Curves     []Chart           `json:"curves"`
}

// QS is the line that fills up to 100.
type QS struct {
	Row     string `json:"row"`
	Percent string `json:"percent"`
}

// CellProblem is one fault in what was typed. A fault in the head has no row.
type CellProblem struct {
	List  string `json:"list"` // "head", "lines" or "making"
	Row   string `json:"row"`
	Field string `json:"field"`
	Text  string `json:"text"`
	Help  string `json:"help"`
}

// LineShown is what a line was found to be, for the cells beside what was
// typed. Percent and grams are empty where the percentage cannot be read.
type LineShown struct {
	Code     string   `json:"code"`
	Name     string   `json:"name"`
	INCI     []string `json:"inci"`
	Function string   `json:"function"`
	Percent  string   `json:"percent"`
	Grams    string   `json:"grams"`   // of the batch, or of 100 g where none is stated
	Kind     string   `json:"kind"`    // "water", "polyol", "oil", "grain" or "other"
	Nearest  []string `json:"nearest"` // names the library holds that are like one it does not
}

// Note is a finding in the margin, at the rows and figures it is about.
type Note struct {
	Rule     string   `json:"rule"`
	Severity string   `json:"severity"`
	Verdict  string   `json:"verdict"`
	Rows     []string `json:"rows"`
	Figures  []string `json:"figures"`
	Text     string   `json:"text"`
	Help     string   `json:"help"`
	Needs    string   `json:"needs"`
}

// Chart is one curve drawn, said in a sentence, and as a table.
type Chart struct {
	ID       string `json:"id"`
	Title    string `json:"title"`
	Sentence string `json:"sentence"`
	SVG      string `json:"svg"`
	Narrow   string `json:"narrow"` // the same drawn for a phone
	Table    Table  `json:"table"`
}
