package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"strings"
	"time"

	"levigate"
	"levigate/internal/fold"
)

// CreateDraft keeps a new draft at revision 0.
func (s *Store) CreateDraft(ctx context.Context, d *levigate.Draft) error {
	if err := errors.Join(validID("draft", d.ID), d.Document.Valid()); err != nil {
		return first(err)
	}
	kept := levigate.Draft{ID: d.ID, Document: whole(d.Document), Created: d.Created, Changed: d.Changed}
	if kept.Created.IsZero() {
		kept.Created = s.now()
	}
	if kept.Changed.IsZero() {
		kept.Changed = kept.Created
	}
	kept.Created, kept.Changed = kept.Created.UTC().Truncate(time.Microsecond), kept.Changed.UTC().Truncate(time.Microsecond)
	body, err := encode(kept.Document)
	if err != nil {
		return told(ctx, "keeping the formula", err)
	}
	err = s.write(ctx, "keeping the formula", func(tx *sql.Tx) error {
		if there, err := exists(ctx, tx, "drafts", d.ID); err != nil || there {
			return taken(err, "formula", d.ID)
		}
		h := kept.Document.Head
		_, err := tx.ExecContext(ctx, `INSERT INTO drafts (id, code, name, product, search, revision, created, changed) VALUES ($1, $2, $3, $4, $5, 0, $6, $7)`,
			d.ID, plain(h["code"]), plain(h["name"]), plain(h["product"]), searched(h), timeText(kept.Created), timeText(kept.Changed))
		if err == nil {
			_, err = tx.ExecContext(ctx, `INSERT INTO documents (draft, body) VALUES ($1, $2)`, d.ID, body)
		}
		return err
	})
	if err == nil {
		*d = kept
	}
	return err
}

// searched is what a list is searched in.
func searched(head map[string]string) string {
	return fold.String(head["code"]) + "\n" + fold.String(head["name"])
}

// Draft reads one draft.
func (s *Store) Draft(ctx context.Context, id string) (d *levigate.Draft, err error) {
	err = s.read(ctx, "reading the formula", func(tx *sql.Tx) error {
		d, err = draft(ctx, tx, id)
		return err
	})
	return d, err
}

func draft(ctx context.Context, tx *sql.Tx, id string) (*levigate.Draft, error) {
	d := &levigate.Draft{ID: id}
	var body, created, changed string
	err := tx.QueryRowContext(ctx, `SELECT d.revision, d.created, d.changed, x.body FROM drafts d JOIN documents x ON x.draft = d.id WHERE d.id = $1`, id).
		Scan(&d.Revision, &created, &changed, &body)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, missing("formula", id)
	}
	if err != nil {
		return nil, err
	}
	doc, e1 := decode[levigate.Document](body)
	d.Document = whole(doc)
	var e2, e3 error
	d.Created, e2 = timeOf(created)
	d.Changed, e3 = timeOf(changed)
	return d, errors.Join(e1, e2, e3)
}

// ListDrafts lists drafts, last changed first; most below 1 lists all.
func (s *Store) ListDrafts(ctx context.Context, text string, most int) ([]levigate.DraftInfo, error) {
	if most < 1 {
		most = 1 << 30
	}
	out := []levigate.DraftInfo{}
	err := s.read(ctx, "listing the formulas", func(tx *sql.Tx) error {
		return each(ctx, tx, func(scan func(...any) error) error {
			var d levigate.DraftInfo
			var changed string
			err := scan(&d.ID, &d.Code, &d.Name, &d.Product, &d.Revision, &changed)
			if err == nil {
				d.Changed, err = timeOf(changed)
			}
			out = append(out, d)
			return err
		}, `SELECT id, code, name, product, revision, changed FROM drafts WHERE search LIKE $1 ESCAPE '!' ORDER BY changed DESC, id LIMIT $2`, holding(text), most)
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

var literal = strings.NewReplacer("!", "!!", "%", "!%", "_", "!_")

func holding(text string) string { return "%" + literal.Replace(fold.String(text)) + "%" }

// DeleteDraft takes a draft and its commands away; its versions stay.
func (s *Store) DeleteDraft(ctx context.Context, id string) error {
	return s.write(ctx, "deleting the formula", func(tx *sql.Tx) error {
		there, err := exists(ctx, tx, "drafts", id)
		if err == nil && !there {
			return missing("formula", id)
		}
		if err == nil {
			_, err = tx.ExecContext(ctx, `DELETE FROM drafts WHERE id = $1`, id)
		}
		return err
	})
}

// exists reports whether a table holds an id.
func exists(ctx context.Context, tx *sql.Tx, table, id string) (bool, error) {
	var n int
	err := tx.QueryRowContext(ctx, `SELECT count(*) FROM `+table+` WHERE id = $1`, id).Scan(&n)
	return n > 0, err
}

func missing(what, id string) error {
	return refused(levigate.NotFound, "it may have been deleted; list what is there", "no %s %.80q is kept here", what, id)
}

func taken(err error, what, id string) error {
	if err != nil {
		return err
	}
	return refused(levigate.Conflict, "read what is kept under this id, or take a new one", "a %s %.80q is kept already", what, id)
}

// first is the first of several refusals: one cause, one message.
func first(err error) error {
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		return many.Unwrap()[0]
	}
	return err
}
