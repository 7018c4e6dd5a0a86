package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"strings"

	"levigate"
	"levigate/internal/ledger"
)

// Contents is what a workspace holds, once all of it was looked at.
type Contents struct {
	Drafts, Commands, Versions, Records int
	Head                                ledger.Head // the end of the chain of records
	Faults                              []levigate.Fault
	Chain                               *ledger.Checker
}

// Empty reports whether it holds nothing.
func (c *Contents) Empty() bool { return c.Drafts+c.Versions+c.Records == 0 }

// Check looks at all of the workspace: the file's own order, the tables, every
// formula, and the chain of records. The error says what is damaged; the faults
// what was done to records.
func (s *Store) Check(ctx context.Context) (c *Contents, err error) {
	err = s.read(ctx, "looking at the workspace", func(tx *sql.Tx) error {
		c, err = look(ctx, tx, s.path)
		return err
	})
	return c, err
}

// examine looks at all of a file that may come from anyone. It must be a copy
// nobody else writes; it is opened so that it can't be changed and nothing in it
// is run.
func examine(ctx context.Context, path, shown string) (c *Contents, err error) {
	switch err := header(path); {
	case errors.Is(err, errEmpty):
		return nil, bad(shown, "is empty", "name a file that levigate backup made", nil)
	case err != nil:
		return nil, renamed(err, path, shown)
	}
	db, err := connect(path, 1, "mode=ro", "immutable=1", "_pragma=query_only(1)", "_pragma=cell_size_check(1)", "_pragma=mmap_size(0)")
	if err != nil {
		return nil, bad(shown, "can't be opened", "take another copy of it", err)
	}
	defer db.Close()
	err = inTx(ctx, db, func(tx *sql.Tx) error {
		c, err = look(ctx, tx, shown)
		return err
	})
	if err != nil && ctx.Err() == nil && levigate.CodeOf(err) == levigate.Internal {
		err = damaged(shown, err)
	}
	return c, told(ctx, "looking at "+shown, err)
}

// renamed tells an error about the copy as one about the file that was named.
func renamed(err error, path, shown string) error {
	if e, ok := errors.AsType[*levigate.Error](err); ok {
		out := *e
		out.Message = strings.ReplaceAll(e.Message, path, shown)
		return &out
	}
	return err
}

func damaged(shown string, err error) error {
	return bad(shown, "is damaged: "+err.Error(), "take another copy of it, or an older backup", err)
}

// look goes from the outside in: no step reads what an earlier one has not found
// in order.
func look(ctx context.Context, tx *sql.Tx, shown string) (*Contents, error) {
	if err := schemaKnown(ctx, tx, shown); err != nil {
		return nil, err
	}
	for _, pragma := range []string{"integrity_check(20)", "foreign_key_check"} {
		found, err := rowsOf(ctx, tx, "PRAGMA "+pragma)
		if err != nil {
			return nil, err
		}
		if len(found) > 0 && !slices.Equal(found, []string{"ok"}) {
			return nil, damaged(shown, fmt.Errorf("%s: %s", pragma[:strings.IndexAny(pragma+"(", "(")], found[0]))
		}
	}
	c := &Contents{}
	for _, step := range []func(context.Context, *sql.Tx, *Contents) error{lookAtDrafts, lookAtCommands, lookAtVersions} {
		if err := step(ctx, tx, c); err != nil {
			return nil, damaged(shown, err)
		}
	}
	chain, head, err := chainOf(ctx, tx)
	if err != nil {
		return nil, damaged(shown, err)
	}
	c.Chain, c.Head, c.Records, c.Faults = chain, head, chain.Len(), chain.Faults(head)
	return c, nil
}

// rowsOf prints the rows of a query, one a line.
func rowsOf(ctx context.Context, tx *sql.Tx, query string) ([]string, error) {
	rows, err := tx.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	var out []string
	for rows.Next() {
		values, into := make([]sql.NullString, len(columns)), make([]any, len(columns))
		for i := range values {
			into[i] = &values[i]
		}
		if err := rows.Scan(into...); err != nil {
			return nil, err
		}
		var words []string
		for _, v := range values {
			words = append(words, v.String)
		}
		out = append(out, strings.Join(words, " "))
	}
	return out, rows.Err()
}

func lookAtDrafts(ctx context.Context, tx *sql.Tx, c *Contents) error {
	var ids []string
	err := each(ctx, tx, func(scan func(...any) error) error {
		var id string
		err := scan(&id)
		ids = append(ids, id)
		return err
	}, `SELECT id FROM drafts`)
	if err != nil {
		return err
	}
	c.Drafts = len(ids)
	for _, id := range ids {
		d, err := draft(ctx, tx, id)
		if err == nil {
			err = d.Document.Valid()
		}
		if err != nil {
			return fmt.Errorf("the formula %q can't be read: %w", id, err)
		}
		var n int64
		if err := tx.QueryRowContext(ctx, `SELECT count(*) FROM commands WHERE draft = $1`, id).Scan(&n); err != nil {
			return err
		}
		if n != d.Revision {
			return fmt.Errorf("the formula %q is at revision %d and has %d edits", id, d.Revision, n)
		}
	}
	return nil
}

func lookAtCommands(ctx context.Context, tx *sql.Tx, c *Contents) error {
	return each(ctx, tx, func(scan func(...any) error) error {
		var id, draft, command, inverse string
		var a levigate.Applied
		if err := scan(&id, &draft, &command, &inverse); err != nil {
			return err
		}
		c.Commands++
		if err := readApplied(&a, command, inverse); err != nil {
			return fmt.Errorf("the edit %q can't be read: %w", id, err)
		}
		if a.Command.ID != id || a.Command.Draft != draft {
			return fmt.Errorf("the edit %q says it is %q of %q", id, a.Command.ID, a.Command.Draft)
		}
		return nil
	}, `SELECT id, draft, command, inverse FROM commands`)
}

func lookAtVersions(ctx context.Context, tx *sql.Tx, c *Contents) error {
	return eachVersion(ctx, tx, func(v *levigate.Version) error {
		c.Versions++
		if err := errors.Join(v.Document.Valid(), validChecked(v)); err != nil {
			return fmt.Errorf("the version %q can't be read: %w", v.ID, err)
		}
		return nil
	}, `ORDER BY id`)
}
