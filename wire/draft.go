package wire

import (
	"maps"
	"time"

	"levigate"
)

// DraftInfo is a draft in a list.
type DraftInfo struct {
	ID       string    `json:"id"`
	Code     string    `json:"code"`
	Name     string    `json:"name"`
	Product  string    `json:"product"`
	Revision int64     `json:"revision"`
	Changed  time.Time `json:"changed"`
}

// DraftList is the list of drafts, the one changed last first.
type DraftList struct {
	Drafts []DraftInfo `json:"drafts"`
}

// Draft is a formula being written.
type Draft struct {
	ID       string            `json:"id"`
	Revision int64             `json:"revision"`
	Document levigate.Document `json:"document"`
	Created  time.Time         `json:"created"`
	Changed  time.Time         `json:"changed"`
}

// NewDraft asks for a draft: of a document, or of a formula file's text.
type NewDraft struct {
	ID       string             `json:"id" minLength:"8" maxLength:"64" pattern:"^[A-Za-z0-9-]+$" doc:"Made by the client; the same id again is refused"`
	Document *levigate.Document `json:"document,omitempty"`
	File     string             `json:"file,omitempty"`
}

// DraftMade is the answer to NewDraft.
type DraftMade struct {
	Draft Draft `json:"draft"`
}

// DraftOpened is a draft with its check.
type DraftOpened struct {
	Draft Draft `json:"draft"`
	Check Check `json:"check"`
}

// NewCommand is an edit as a client sends it. What an edit does not use may be
// left out.
type NewCommand struct {
	ID      string      `json:"id" minLength:"8" maxLength:"64" pattern:"^[A-Za-z0-9-]+$" doc:"Made by the client; sent twice it is applied once"`
	Base    int64       `json:"base" minimum:"0" doc:"The revision it was made on"`
	Label   string      `json:"label,omitempty" maxLength:"200"`
	By      string      `json:"by,omitempty" maxLength:"200"`
	Changes []NewChange `json:"changes" minItems:"1" maxItems:"2000"`
}

// NewChange is one change of a NewCommand.
type NewChange struct {
	Do    string            `json:"do" enum:"set,insert,remove,move"`
	List  string            `json:"list" enum:"head,lines,making"`
	Row   string            `json:"row,omitempty"`
	Field string            `json:"field,omitempty"`
	From  string            `json:"from,omitempty" doc:"What the sender saw in the cell"`
	To    string            `json:"to,omitempty"`
	After string            `json:"after,omitempty" doc:"The row it is put behind; empty for the top"`
	Cells map[string]string `json:"cells,omitempty"`
}

// NewUndo takes a step back or forward, as a command of this id.
type NewUndo struct {
	ID string `json:"id" minLength:"8" maxLength:"64" pattern:"^[A-Za-z0-9-]+$"`
	By string `json:"by,omitempty" maxLength:"200"`
}

// Edited is the answer to a command, an undo or a redo. Without a command there
// was nothing to undo.
type Edited struct {
	Revision int64             `json:"revision"`
	Again    bool              `json:"again"`
	Command  *levigate.Command `json:"command"`
	Check    Check             `json:"check"`
}

// CommandAt is a command and the revision it made.
type CommandAt struct {
	Revision int64            `json:"revision"`
	Command  levigate.Command `json:"command"`
}

// CommandList is what was applied after a revision.
type CommandList struct {
	Commands []CommandAt `json:"commands"`
}

// Event says that a draft has changed.
type Event struct {
	ID       string `json:"id"`
	Revision int64  `json:"revision"`
	Command  string `json:"command"` // its id; empty when the draft was made
}

// Refusal is an answer that is none: what is wrong, and what to do. Clashes and
// the draft's revision come with a command that was made on cells which hold
// something else by now.
type Refusal struct {
	Status   int              `json:"-"`
	Code     string           `json:"code" enum:"invalid,not-found,conflict,internal"`
	Message  string           `json:"message"`
	Help     string           `json:"help"`
	Clashes  []levigate.Clash `json:"clashes,omitempty"`
	Revision int64            `json:"revision,omitempty"`
}

// Error is the message.
func (r *Refusal) Error() string { return r.Message }

// GetStatus is the HTTP status it goes with.
func (r *Refusal) GetStatus() int { return r.Status }

// DraftOf turns a draft into JSON's shape.
func DraftOf(d *levigate.Draft) Draft {
	return Draft{d.ID, d.Revision, DocumentOf(d.Document), d.Created, d.Changed}
}

// DraftInfoOf turns an entry of the list into JSON's shape.
func DraftInfoOf(d *levigate.DraftInfo) DraftInfo {
	return DraftInfo{d.ID, d.Code, d.Name, d.Product, d.Revision, d.Changed}
}

// DraftsOf turns the list into JSON's shape.
func DraftsOf(list []levigate.DraftInfo) DraftList { return DraftList{each(list, DraftInfoOf)} }

// DocumentOf is a document with nothing in it null.
func DocumentOf(d levigate.Document) levigate.Document {
	d.Lines, d.Making = each(d.Lines, rowOf), each(d.Making, rowOf)
	d.Head = cells(d.Head)
	return d
}

func rowOf(r *levigate.Row) levigate.Row { return levigate.Row{ID: r.ID, Cells: cells(r.Cells)} }

func cells(m map[string]string) map[string]string {
	if m == nil {
		return map[string]string{}
	}
	return maps.Clone(m)
}

// CommandsOf turns what was applied into JSON's shape.
func CommandsOf(list []levigate.Applied) CommandList {
	return CommandList{each(list, func(a *levigate.Applied) CommandAt { return CommandAt{a.Revision, a.Command} })}
}

// Command is the edit as the program knows it.
func (c *NewCommand) Command(draft string) *levigate.Command {
	out := &levigate.Command{ID: c.ID, Draft: draft, Base: c.Base, Label: c.Label, By: c.By}
	for _, ch := range c.Changes {
		out.Changes = append(out.Changes, levigate.Change{Do: levigate.Verb(ch.Do), List: ch.List, Row: ch.Row, Field: ch.Field,
			From: ch.From, To: ch.To, After: ch.After, Cells: ch.Cells})
	}
	return out
}
