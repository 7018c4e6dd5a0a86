package sqlite

import (
	"context"
	"database/sql"
	"errors"

	"levigate"
)

// Undo applies the inverse of the last command that is not undone.
//
// The log is a stack twice over. The commands that are done, by revision, are
// what undo takes from its end; the undos that are undone, by revision, are what
// redo takes from its end. Whatever is taken is spent, and what takes it is
// kept as a command like any other, so both survive a restart.
func (s *Store) Undo(ctx context.Context, draft, commandID, by string) (*levigate.Applied, error) {
	return s.step(ctx, "undo", draft, commandID, by, done, undone)
}

// Redo applies again the command undone last, unless another edit came since.
func (s *Store) Redo(ctx context.Context, draft, commandID, by string) (*levigate.Applied, error) {
	return s.step(ctx, "redo", draft, commandID, by, undone, done)
}

// step takes the last command in one state back, by a command in the other.
func (s *Store) step(ctx context.Context, do, id, commandID, by, from, to string) (out *levigate.Applied, err error) {
	if err := errors.Join(validID("command", commandID), validText("the command", by)); err != nil {
		return nil, first(err)
	}
	sent, err := digest(do, &levigate.Command{Draft: id})
	if err != nil {
		return nil, told(ctx, do, err)
	}
	err = s.write(ctx, "the "+do, func(tx *sql.Tx) error {
		if out, err = again(ctx, tx, commandID, sent); out != nil || err != nil {
			return err
		}
		var last levigate.Applied
		var revision int64
		var command, inverse string
		err := tx.QueryRowContext(ctx, `SELECT d.revision, c.command, c.inverse FROM drafts d LEFT JOIN commands c ON c.draft = d.id AND c.state = $2
			WHERE d.id = $1 ORDER BY c.revision DESC LIMIT 1`, id, from).Scan(&revision, orEmpty{&command}, orEmpty{&inverse})
		switch {
		case errors.Is(err, sql.ErrNoRows):
			return missing("formula", id)
		case err != nil || command == "":
			return err // nothing to do
		}
		if err := readApplied(&last, command, inverse); err != nil {
			return err
		}
		if err := restate(ctx, tx, `id = $2`, spent, last.Command.ID); err != nil {
			return err
		}
		out, err = s.apply(ctx, tx, &levigate.Command{ID: commandID, Draft: id, Base: revision, Label: last.Command.Label,
			Changes: last.Inverse, Undoes: last.Command.ID, By: by}, sent, to)
		return err
	})
	return answered(out, err)
}

// orEmpty scans a text that may be missing.
type orEmpty struct{ text *string }

// Scan takes what the database gives.
func (o orEmpty) Scan(v any) error {
	var s sql.NullString
	err := s.Scan(v)
	*o.text = s.String
	return err
}
