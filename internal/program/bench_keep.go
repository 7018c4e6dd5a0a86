package program

import (
	"context"
	"encoding/json"

	"levigate"
	"levigate/internal/api"
	"levigate/wire"
)

// Materials lists what a text may mean, best first.
func (b *Bench) Materials(_ context.Context, text string, most int) (wire.MaterialList, error) {
	return wire.MaterialsOf(b.index().Search(text, most)), nil
}

// Explain tells what an id stands for.
func (b *Bench) Explain(_ context.Context, id string) (*wire.Explanation, error) {
	x, err := b.program.Explain(id)
	if err != nil {
		if levigate.CodeOf(err) == levigate.Invalid {
			err = &levigate.Error{Code: levigate.NotFound, Message: err.Error(), Help: err.(*levigate.Error).Help, Cause: err}
		}
		return nil, err
	}
	out := &wire.Explanation{ID: x.ID, Title: x.Title, Kind: x.Kind, Sections: []wire.Explanatory{}}
	for _, s := range x.Sections {
		e := wire.Explanatory{Head: s.Head, Text: s.Text, Items: append([]string{}, s.Items...)}
		if s.Table != nil {
			e.Table = &wire.Table{Head: append([]string{}, s.Table.Head...), Rows: append([][]string{}, s.Table.Rows...), Foot: s.Table.Foot}
		}
		out.Sections = append(out.Sections, e)
	}
	return out, nil
}

// Freeze keeps a version of a draft: what was typed, every raw material it uses
// whole, and the check of its day.
func (b *Bench) Freeze(ctx context.Context, draft string, n *wire.NewVersion) (*wire.VersionInfo, error) {
	d, err := b.store.Draft(ctx, draft)
	if err != nil {
		return nil, err
	}
	c, err := b.check(ctx, d, api.Ask{Curves: true})
	if err != nil {
		return nil, err
	}
	made := b.program.Made()
	v := &levigate.Version{ID: n.ID, Draft: draft, Revision: d.Revision, Reason: n.Reason, By: n.By, At: b.program.Clock(),
		Document: d.Document, Materials: map[string]json.RawMessage{}, Program: made.Program, Refdata: made.Refdata}
	for i := range c.made.Formula.Lines {
		m := c.made.Formula.Lines[i].Match.Material
		if m == nil {
			continue
		}
		if v.Materials[m.Revision()], err = json.Marshal(m); err != nil {
			return nil, err
		}
	}
	if v.Check, err = json.Marshal(c.wire); err != nil {
		return nil, err
	}
	if err := b.store.Freeze(ctx, v); err != nil {
		return nil, err
	}
	out := wire.VersionInfoOf(v)
	return &out, nil
}

// Versions lists the versions of a draft.
func (b *Bench) Versions(ctx context.Context, draft string) (wire.VersionList, error) {
	list, err := b.store.VersionsOf(ctx, draft)
	return wire.VersionsOf(list), err
}

// Version opens a version as it was kept.
func (b *Bench) Version(ctx context.Context, id string) (*wire.Version, error) {
	v, err := b.store.Version(ctx, id)
	if err != nil {
		return nil, err
	}
	out := wire.VersionOf(v)
	return &out, nil
}
