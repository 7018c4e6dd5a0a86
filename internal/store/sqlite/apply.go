package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"time"

	"levigate"
)

// How a command stands for undo and redo.
const (
	done   = "done"   // can be undone
	undone = "undone" // is an undo that can be taken back
	spent  = "spent"  // neither
)

// Apply applies a command once.
func (s *Store) Apply(ctx context.Context, c *levigate.Command) (out *levigate.Applied, err error) {
	if err := errors.Join(validID("command", c.ID), validText("the command", c.Label, c.By)); err != nil {
		return nil, first(err)
	}
	if c.Undoes != "" {
		return nil, refused(levigate.Invalid, "ask for undo or redo instead", "a command can't say by itself that it undoes another")
	}
	sent, err := digest("edit", c)
	if err != nil {
		return nil, told(ctx, "keeping the edit", err)
	}
	err = s.write(ctx, "keeping the edit", func(tx *sql.Tx) error {
		if out, err = again(ctx, tx, c.ID, sent); out != nil || err != nil {
			return err
		}
		next := *c
		next.Changes = slices.Clone(c.Changes)
		out, err = s.apply(ctx, tx, &next, sent, done)
		return err
	})
	return answered(out, err)
}

// apply makes a command's changes and keeps it, its inverse and the document it
// led to.
func (s *Store) apply(ctx context.Context, tx *sql.Tx, c *levigate.Command, sent, state string) (*levigate.Applied, error) {
	d, err := draft(ctx, tx, c.Draft)
	if err != nil {
		return nil, err
	}
	if c.Base < 0 || c.Base > d.Revision {
		return nil, refused(levigate.Conflict, "reload the formula; the workspace may have been brought back from a backup",
			"the edit was made on revision %d, and the formula has reached only %d", c.Base, d.Revision)
	}
	inverse, clashes, err := d.Document.Apply(c)
	if err != nil {
		return nil, err
	}
	if len(clashes) > 0 {
		return nil, &levigate.ClashError{Draft: d.ID, Revision: d.Revision, Clashes: clashes}
	}
	now := s.now()
	if c.At.IsZero() {
		c.At = now
	}
	c.At = c.At.UTC().Truncate(time.Microsecond)
	out := &levigate.Applied{Revision: d.Revision + 1, Command: *c, Inverse: inverse}
	if out.Inverse == nil {
		out.Inverse = []levigate.Change{}
	}
	switch {
	case len(inverse) == 0: // it changed nothing: nothing to undo, and nothing it ended
		state = spent
	case c.Undoes == "": // a new edit ends redo
		if err := restate(ctx, tx, `draft = $2 AND state = 'undone'`, spent, d.ID); err != nil {
			return nil, err
		}
	}
	return out, s.keep(ctx, tx, d, out, sent, state, now)
}

func (s *Store) keep(ctx context.Context, tx *sql.Tx, d *levigate.Draft, a *levigate.Applied, sent, state string, now time.Time) error {
	command, e1 := encode(a.Command)
	inverse, e2 := encode(a.Inverse)
	body, e3 := encode(whole(d.Document))
	if err := errors.Join(e1, e2, e3); err != nil {
		return err
	}
	h := d.Document.Head
	for _, q := range []struct {
		text string
		args []any
	}{
		{`INSERT INTO commands (id, draft, revision, state, sent, command, inverse) VALUES ($1, $2, $3, $4, $5, $6, $7)`,
			[]any{a.Command.ID, d.ID, a.Revision, state, sent, command, inverse}},
		{`UPDATE documents SET body = $1 WHERE draft = $2`, []any{body, d.ID}},
		{`UPDATE drafts SET revision = $1, code = $2, name = $3, product = $4, search = $5, changed = $6 WHERE id = $7`,
			[]any{a.Revision, plain(h["code"]), plain(h["name"]), plain(h["product"]), searched(h), timeText(now), d.ID}},
	} {
		if _, err := tx.ExecContext(ctx, q.text, q.args...); err != nil {
			return err
		}
	}
	return nil
}

// again finds a command that was applied before under the same id.
func again(ctx context.Context, tx *sql.Tx, id, sent string) (*levigate.Applied, error) {
	var known, command, inverse string
	a := &levigate.Applied{Again: true}
	err := tx.QueryRowContext(ctx, `SELECT sent, revision, command, inverse FROM commands WHERE id = $1`, id).Scan(&known, &a.Revision, &command, &inverse)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return nil, nil
	case err != nil:
		return nil, err
	case known != sent:
		return nil, refused(levigate.Conflict, "send the other edit under an id of its own", "another edit was applied under the id %q", id)
	}
	return a, readApplied(a, command, inverse)
}

// CommandsAfter lists what was applied after a revision, in order.
func (s *Store) CommandsAfter(ctx context.Context, id string, revision int64) ([]levigate.Applied, error) {
	out := []levigate.Applied{}
	err := s.read(ctx, "reading the edits", func(tx *sql.Tx) error {
		if there, err := exists(ctx, tx, "drafts", id); err != nil {
			return err
		} else if !there {
			return missing("formula", id)
		}
		return each(ctx, tx, func(scan func(...any) error) error {
			var a levigate.Applied
			var command, inverse string
			err := scan(&a.Revision, &command, &inverse)
			if err == nil {
				err = readApplied(&a, command, inverse)
			}
			out = append(out, a)
			return err
		}, `SELECT revision, command, inverse FROM commands WHERE draft = $1 AND revision > $2 ORDER BY revision`, id, revision)
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

func readApplied(a *levigate.Applied, command, inverse string) (err error) {
	if a.Command, err = decode[levigate.Command](command); err == nil {
		a.Inverse, err = decode[[]levigate.Change](inverse)
	}
	return err
}

func restate(ctx context.Context, tx *sql.Tx, which, state string, args ...any) error {
	_, err := tx.ExecContext(ctx, `UPDATE commands SET state = $1 WHERE `+which, append([]any{state}, args...)...)
	return err
}

func answered(a *levigate.Applied, err error) (*levigate.Applied, error) {
	if err != nil {
		return nil, err
	}
	return a, nil
}
