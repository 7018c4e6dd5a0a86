package levigate

import "time"

// Draft is a formula being written. It changes only by commands, so that no
// edit is lost or made twice and undo survives a reload.
type Draft struct {
	ID       string
	Revision int64 // rises by one with every command applied
	Document Document
	Created  time.Time
	Changed  time.Time
}

// Document is a formula as typed: cells of text that need not be right yet.
// What they mean is made of them anew at every check.
type Document struct {
	Head   map[string]string `json:"head"` // by the fields of Heads
	Lines  []Row             `json:"lines"`
	Making []Row             `json:"making"`
	// Own holds the raw materials of this formula's own, as the formula file
	// writes them under materials.
	Own string `json:"own,omitempty"`
}

// Row is one line or one step. Its ID stays with it wherever it moves.
type Row struct {
	ID    string            `json:"id"`
	Cells map[string]string `json:"cells"`
}

// The fields a document has. A command that names another is refused.
var (
	Heads = []string{"code", "name", "product", "batch", "markets", "claims", "area", "eye", "spray", "under-3", "pack", "notes", "temperature"}
	// A line's percent is typed digits, or "qs" for the line that fills up to 100.
	LineCells = []string{"phase", "material", "percent", "sits", "function", "note"}
	StepCells = []string{"step", "phase", "text", "temperature", "minutes"}
)

// Command is one edit a person made: one or more changes that are made and
// undone together. Its ID is made by whoever sends it; sent twice it is applied
// once.
type Command struct {
	ID      string    `json:"id"`
	Draft   string    `json:"draft"`
	Base    int64     `json:"base"`  // the revision it was made on
	Label   string    `json:"label"` // "paste 6 lines", for undo
	Changes []Change  `json:"changes"`
	Undoes  string    `json:"undoes,omitempty"` // the command whose inverse this is
	At      time.Time `json:"at"`
	By      string    `json:"by"`
}

// Verb is what a change does.
type Verb string

// The verbs.
const (
	Set    Verb = "set"
	Insert Verb = "insert"
	Remove Verb = "remove"
	Move   Verb = "move"
)

// Change is the smallest edit.
//
// Set writes one cell: of the head where List is "head", else of a row. From is
// what the sender saw there; where something else stands by now the command is
// refused and both values are told. Insert and Move put a row behind another,
// or first; where that row has gone they put it last. Remove takes a row away;
// From and Cells are filled in when it is applied, so that it can be undone.
type Change struct {
	Do    Verb              `json:"do"`
	List  string            `json:"list"` // "head", "lines" or "making"
	Row   string            `json:"row,omitempty"`
	Field string            `json:"field,omitempty"`
	From  string            `json:"from"`
	To    string            `json:"to"`
	After string            `json:"after,omitempty"`
	Cells map[string]string `json:"cells,omitempty"`
}

// Applied is the answer to a command.
type Applied struct {
	Revision int64   `json:"revision"`
	Command  Command `json:"command"` // as it was applied
	Inverse  []Change
	Again    bool `json:"again"` // it had been applied before
}

// Clash is a command refused because a cell no longer holds what its sender saw.
type Clash struct {
	List  string `json:"list"`
	Row   string `json:"row,omitempty"`
	Field string `json:"field,omitempty"`
	Seen  string `json:"seen"` // by the sender
	Now   string `json:"now"`  // there now
	Mine  string `json:"mine"` // what the command would have written
	Gone  bool   `json:"gone"` // the row is no longer there
}

// DraftInfo is a draft in a list.
type DraftInfo struct {
	ID, Code, Name, Product string
	Revision                int64
	Changed                 time.Time
}
