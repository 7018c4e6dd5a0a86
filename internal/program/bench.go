package program

import (
	"context"
	"fmt"
	"sync"

	"levigate"
	"levigate/internal/api"
	"levigate/internal/library"
	"levigate/internal/sheet"
	"levigate/wire"
)

// Bench is where formulas are written: drafts in a store, each edit checked
// anew.
type Bench struct {
	program  *Program
	store    levigate.Store
	lib      levigate.Library
	index    func() *library.Index
	readings readings
}

var _ api.Bench = (*Bench)(nil)

// NewBench is a bench over a store. Whoever opened the store closes it.
func NewBench(p *Program, store levigate.Store) *Bench {
	return &Bench{program: p, store: store, lib: &remembering{Library: p.Library},
		index: sync.OnceValue(func() *library.Index { return library.NewIndex(nil, true) })}
}

// Drafts lists drafts whose code or name hold a text.
func (b *Bench) Drafts(ctx context.Context, text string, most int) (wire.DraftList, error) {
	list, err := b.store.ListDrafts(ctx, text, most)
	return wire.DraftsOf(list), err
}

// CreateDraft keeps a new draft, of a document or of a formula file.
func (b *Bench) CreateDraft(ctx context.Context, n *wire.NewDraft) (*wire.Draft, error) {
	d := &levigate.Draft{ID: n.ID}
	switch {
	case (n.Document == nil) == (n.File == ""):
		return nil, invalid("a draft is made of a document or of a formula file", "send one of the two")
	case n.Document != nil:
		d.Document = *n.Document
	default:
		doc, problems := sheet.Import("the file", []byte(n.File))
		if len(problems) > 0 {
			return nil, unreadable(problems)
		}
		d.Document = *doc
	}
	var err error
	if d.Document, err = bounded(d.Document); err != nil {
		return nil, err
	}
	if err := b.store.CreateDraft(ctx, d); err != nil {
		return nil, err
	}
	out := wire.DraftOf(d)
	return &out, nil
}

// bounded makes a document anew by edits, so that it holds to what edits are
// held to: known fields, rows with one id each, nothing beyond the bounds.
func bounded(d levigate.Document) (levigate.Document, error) {
	if len(d.Own) > 10*levigate.MostCell {
		return d, invalid(fmt.Sprintf("own raw materials take at most %d bytes", 10*levigate.MostCell), "leave out what the formula does not use")
	}
	var c levigate.Command
	for field, text := range d.Head {
		c.Changes = append(c.Changes, levigate.Change{Do: levigate.Set, List: "head", Field: field, To: text})
	}
	for _, l := range []struct {
		name string
		rows []levigate.Row
	}{{"lines", d.Lines}, {"making", d.Making}} {
		after := ""
		for _, r := range l.rows {
			c.Changes = append(c.Changes, levigate.Change{Do: levigate.Insert, List: l.name, Row: r.ID, After: after, Cells: r.Cells})
			after = r.ID
		}
	}
	out := levigate.Document{Own: d.Own}
	if len(c.Changes) == 0 {
		return out, nil
	}
	_, _, err := out.Apply(&c)
	return out, err
}

// unreadable is what is wrong with a formula file, the first fault of it.
func unreadable(problems []levigate.Problem) error {
	p := problems[0]
	e := &levigate.Error{Code: levigate.Invalid, Message: fmt.Sprintf("the formula file cannot be read: line %d, column %d: %s", max(p.Line, 1), max(p.Column, 1), p.Text), Help: p.Help}
	if n := len(problems) - 1; n > 0 {
		e.Help += fmt.Sprintf(" (and %d more)", n)
	}
	return e
}

// Draft opens a draft with its check.
func (b *Bench) Draft(ctx context.Context, id string) (*wire.DraftOpened, error) {
	d, err := b.store.Draft(ctx, id)
	if err != nil {
		return nil, err
	}
	c, err := b.check(ctx, d, api.Ask{})
	if err != nil {
		return nil, err
	}
	return &wire.DraftOpened{Draft: wire.DraftOf(d), Check: *c.wire}, nil
}

// DeleteDraft forgets a draft.
func (b *Bench) DeleteDraft(ctx context.Context, id string) error {
	return b.store.DeleteDraft(ctx, id)
}

// Apply applies a command and checks what came of it.
func (b *Bench) Apply(ctx context.Context, c *levigate.Command, ask api.Ask) (*wire.Edited, error) {
	if err := b.asked(ask); err != nil {
		return nil, err
	}
	c.At = b.program.Clock()
	a, err := b.store.Apply(ctx, c)
	return b.edited(ctx, c.Draft, a, err, ask)
}

// Undo takes the last command back.
func (b *Bench) Undo(ctx context.Context, draft, id, by string, ask api.Ask) (*wire.Edited, error) {
	if err := b.asked(ask); err != nil {
		return nil, err
	}
	a, err := b.store.Undo(ctx, draft, id, by)
	return b.edited(ctx, draft, a, err, ask)
}

// Redo applies again what was undone last.
func (b *Bench) Redo(ctx context.Context, draft, id, by string, ask api.Ask) (*wire.Edited, error) {
	if err := b.asked(ask); err != nil {
		return nil, err
	}
	a, err := b.store.Redo(ctx, draft, id, by)
	return b.edited(ctx, draft, a, err, ask)
}

func (b *Bench) edited(ctx context.Context, draft string, a *levigate.Applied, err error, ask api.Ask) (*wire.Edited, error) {
	if err != nil {
		return nil, err
	}
	d, err := b.store.Draft(ctx, draft)
	if err != nil {
		return nil, err
	}
	c, err := b.check(ctx, d, ask)
	if err != nil {
		return nil, err
	}
	out := &wire.Edited{Revision: d.Revision, Check: *c.wire}
	if a != nil {
		out.Revision, out.Again, out.Command = a.Revision, a.Again, &a.Command
	}
	return out, nil
}

// CommandsAfter lists what was applied after a revision.
func (b *Bench) CommandsAfter(ctx context.Context, draft string, revision int64) (wire.CommandList, error) {
	list, err := b.store.CommandsAfter(ctx, draft, revision)
	return wire.CommandsOf(list), err
}

// Check checks a draft.
func (b *Bench) Check(ctx context.Context, draft string, ask api.Ask) (*wire.Check, error) {
	d, err := b.store.Draft(ctx, draft)
	if err != nil {
		return nil, err
	}
	c, err := b.check(ctx, d, ask)
	if err != nil {
		return nil, err
	}
	return c.wire, nil
}

// CheckJSON checks a formula that is not kept.
func (b *Bench) CheckJSON(ctx context.Context, body []byte, ask api.Ask) (*wire.Check, error) {
	doc, err := sheet.JSON(body)
	if err != nil {
		return nil, err
	}
	d := &levigate.Draft{}
	if d.Document, err = bounded(*doc); err != nil {
		return nil, err
	}
	c, err := b.check(ctx, d, ask)
	if err != nil {
		return nil, err
	}
	return c.wire, nil
}

// FormulaFile writes a draft as a formula file.
func (b *Bench) FormulaFile(ctx context.Context, draft string) (string, []byte, error) {
	d, err := b.store.Draft(ctx, draft)
	if err != nil {
		return "", nil, err
	}
	data, err := sheet.File(&d.Document)
	if err != nil {
		return "", nil, err
	}
	return fileName(d.Document.Head["code"]) + suffix, data, nil
}

// fileName keeps of a code what every system takes in a file's name.
func fileName(code string) string {
	out := []byte{}
	for i := 0; i < len(code); i++ {
		switch c := code[i]; {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', c == '-', c == '_':
			out = append(out, c)
		}
	}
	if len(out) == 0 {
		return "formula"
	}
	return string(out)
}
