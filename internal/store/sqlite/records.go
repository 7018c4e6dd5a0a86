package sqlite

import (
	"context"
	"database/sql"
	"errors"

	"levigate"
	"levigate/internal/ledger"
)

// mostBody bounds one record.
const mostBody = 4 << 20

// AddRecord gives a record its place in the chain and keeps it.
func (s *Store) AddRecord(ctx context.Context, r *levigate.Record) error {
	if err := errors.Join(validID("record", r.ID), validText("the record", r.Kind, r.Subject.Kind, r.Subject.Key, r.By, r.Why)); err != nil {
		return first(err)
	}
	if r.Kind == "" || len(r.Body) > mostBody {
		return refused(levigate.Invalid, "say what kind it is, and keep it short", "a record has a kind and at most %d bytes", mostBody)
	}
	kept := *r
	if kept.At.IsZero() {
		kept.At = s.now()
	}
	err := s.write(ctx, "keeping the record", func(tx *sql.Tx) error {
		if there, err := exists(ctx, tx, "records", r.ID); err != nil || there {
			return taken(err, "record", r.ID)
		}
		if r.Corrects != "" {
			if there, err := exists(ctx, tx, "records", r.Corrects); err != nil || !there {
				return errors.Join(err, refused(levigate.Invalid, "name one that is kept", "the record %.80q, which this one corrects, is not kept here", r.Corrects))
			}
		}
		head, err := headOf(ctx, tx)
		if err != nil {
			return err
		}
		next := ledger.Seal(head, &kept)
		body := kept.Body
		if body == nil {
			body = []byte{}
		}
		_, err = tx.ExecContext(ctx, `INSERT INTO records (`+recordColumns+`) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)`,
			kept.Seq, kept.ID, kept.Kind, kept.Subject.Kind, kept.Subject.Key, body, kept.By, kept.Why, timeText(kept.At), kept.Corrects, kept.Prev, kept.Hash)
		if err == nil {
			_, err = tx.ExecContext(ctx, `INSERT INTO chain (name, seq, hash) VALUES ('records', $1, $2) ON CONFLICT (name) DO UPDATE SET seq = $1, hash = $2`, next.Seq, next.Hash)
		}
		return err
	})
	if err == nil {
		*r = kept
	}
	return err
}

const recordColumns = `seq, id, kind, subject_kind, subject_key, body, author, why, made, corrects, prev, hash`

// headOf is the end of the chain as it is noted apart from the records.
func headOf(ctx context.Context, tx *sql.Tx) (h ledger.Head, err error) {
	err = tx.QueryRowContext(ctx, `SELECT seq, hash FROM chain WHERE name = 'records'`).Scan(&h.Seq, &h.Hash)
	if errors.Is(err, sql.ErrNoRows) {
		err = nil
	}
	return h, err
}

// Record reads one record.
func (s *Store) Record(ctx context.Context, id string) (*levigate.Record, error) {
	var out *levigate.Record
	err := s.read(ctx, "reading the record", func(tx *sql.Tx) error {
		return eachRecord(ctx, tx, func(r *levigate.Record) error { out = r; return nil }, `WHERE id = $1`, id)
	})
	if err == nil && out == nil {
		err = missing("record", id)
	}
	return out, err
}

// RecordsOf lists the records of a subject in the order they were made.
func (s *Store) RecordsOf(ctx context.Context, of levigate.Subject) ([]levigate.Record, error) {
	out := []levigate.Record{}
	err := s.read(ctx, "reading the records", func(tx *sql.Tx) error {
		return eachRecord(ctx, tx, func(r *levigate.Record) error { out = append(out, *r); return nil },
			`WHERE subject_kind = $1 AND subject_key = $2 ORDER BY seq`, of.Kind, of.Key)
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

func eachRecord(ctx context.Context, tx *sql.Tx, do func(*levigate.Record) error, which string, args ...any) error {
	return each(ctx, tx, func(scan func(...any) error) error {
		r := &levigate.Record{}
		var made string
		err := scan(&r.Seq, &r.ID, &r.Kind, &r.Subject.Kind, &r.Subject.Key, &r.Body, &r.By, &r.Why, &made, &r.Corrects, &r.Prev, &r.Hash)
		if err != nil {
			return err
		}
		if r.At, err = timeOf(made); err != nil {
			return err
		}
		return do(r)
	}, `SELECT `+recordColumns+` FROM records `+which, args...)
}

// Verify walks the chain and names every record edited, removed, moved or put
// in.
func (s *Store) Verify(ctx context.Context) (faults []levigate.Fault, err error) {
	c, head, err := s.Chain(ctx)
	if err != nil {
		return nil, err
	}
	return c.Faults(head), nil
}

// Chain reads the whole chain, and the end that is noted apart.
func (s *Store) Chain(ctx context.Context) (c *ledger.Checker, head ledger.Head, err error) {
	err = s.read(ctx, "reading the records", func(tx *sql.Tx) error {
		c, head, err = chainOf(ctx, tx)
		return err
	})
	return c, head, err
}

func chainOf(ctx context.Context, tx *sql.Tx) (*ledger.Checker, ledger.Head, error) {
	c := &ledger.Checker{}
	head, err := headOf(ctx, tx)
	if err != nil {
		return nil, head, err
	}
	err = each(ctx, tx, func(scan func(...any) error) error {
		r, err := edited(scan)
		c.Add(r)
		return err
	}, `SELECT `+recordColumns+` FROM records ORDER BY seq`)
	return c, head, err
}

// edited reads a record in which someone may have put anything: what can't be
// what was written there is read as nothing, and the hash says that it was
// edited.
func edited(scan func(...any) error) (*levigate.Record, error) {
	var v [12]any
	into := make([]any, len(v))
	for i := range v {
		into[i] = &v[i]
	}
	if err := scan(into...); err != nil {
		return nil, err
	}
	text := func(i int) string { s, _ := v[i].(string); return s }
	r := &levigate.Record{ID: text(1), Kind: text(2), Subject: levigate.Subject{Kind: text(3), Key: text(4)},
		By: text(6), Why: text(7), Corrects: text(9), Prev: text(10), Hash: text(11)}
	r.Seq, _ = v[0].(int64)
	if body, ok := v[5].([]byte); ok {
		r.Body = body
	} else {
		r.Body = []byte(text(5))
	}
	r.At, _ = timeOf(text(8))
	return r, nil
}
