package levigate

import (
	"encoding/json"
	"time"
)

// Version is a draft frozen by a person with a reason. It is never edited.
type Version struct {
	ID       string
	Draft    string
	Number   int   // of the draft, from 1
	Revision int64 // of the draft it froze
	Reason   string
	By       string
	At       time.Time
	Document Document
	// Materials holds every raw material it used, by revision, whole.
	Materials map[string]json.RawMessage
	// Check is the formula check of its day, in the JSON everyone sees.
	Check   json.RawMessage
	Program string
	Refdata string
}

// Record is something that happened: a reading, a weighing, a sign-off. It is
// written once; a correction is a new record that points at the old.
type Record struct {
	ID       string
	Kind     string // "reading"
	Subject  Subject
	Body     []byte // the exact bytes that were hashed
	By       string
	Why      string
	At       time.Time
	Corrects string // the record it corrects
	Seq      int64  // place in the chain, from 1
	Prev     string // hash of the record before it, in hex; empty for the first
	Hash     string
}

// Fault is what is wrong with a kept record.
type Fault struct {
	Seq    int64
	Record string // its ID, where one can be named
	Text   string
}
