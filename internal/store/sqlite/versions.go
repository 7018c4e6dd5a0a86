package sqlite

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"time"

	"levigate"
)

// Freeze keeps a version and gives it its number.
func (s *Store) Freeze(ctx context.Context, v *levigate.Version) error {
	if err := errors.Join(validID("version", v.ID), validText("the version", v.Reason, v.By, v.Program, v.Refdata), v.Document.Valid(), validChecked(v)); err != nil {
		return first(err)
	}
	kept := *v
	if kept.At.IsZero() {
		kept.At = s.now()
	}
	kept.At = kept.At.UTC().Truncate(time.Microsecond)
	if kept.Materials == nil {
		kept.Materials = map[string]json.RawMessage{}
	}
	kept.Document = whole(v.Document)
	document, e1 := encode(kept.Document)
	materials, e2 := encode(kept.Materials)
	if err := errors.Join(e1, e2); err != nil {
		return told(ctx, "freezing the version", err)
	}
	err := s.write(ctx, "freezing the version", func(tx *sql.Tx) error {
		if there, err := exists(ctx, tx, "versions", v.ID); err != nil || there {
			return taken(err, "version", v.ID)
		}
		d, err := draft(ctx, tx, v.Draft)
		if err != nil {
			return err
		}
		if v.Revision < 0 || v.Revision > d.Revision {
			return refused(levigate.Invalid, "reload the formula", "a version of revision %d can't be frozen; the formula has reached only %d", v.Revision, d.Revision)
		}
		if err := tx.QueryRowContext(ctx, `SELECT coalesce(max(number), 0) + 1 FROM versions WHERE draft = $1`, v.Draft).Scan(&kept.Number); err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, `INSERT INTO versions (`+versionColumns+`) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)`,
			kept.ID, kept.Draft, kept.Number, kept.Revision, kept.Reason, kept.By, timeText(kept.At), document, materials, string(kept.Check), kept.Program, kept.Refdata)
		return err
	})
	if err == nil {
		*v = kept
	}
	return err
}

const versionColumns = `id, draft, number, revision, reason, author, made, document, materials, assessment, program, refdata`

func validChecked(v *levigate.Version) error {
	ok := len(v.Check) == 0 || json.Valid(v.Check)
	for _, m := range v.Materials {
		ok = ok && json.Valid(m)
	}
	if ok {
		return nil
	}
	return refused(levigate.Invalid, "send them as they are printed", "the formula check or a raw material of the version is no JSON")
}

// Version reads one version.
func (s *Store) Version(ctx context.Context, id string) (*levigate.Version, error) {
	all, err := s.versions(ctx, `id = $1`, id)
	if err == nil && len(all) == 0 {
		err = missing("version", id)
	}
	if err != nil {
		return nil, err
	}
	return &all[0], nil
}

// VersionsOf lists a draft's versions by number, also when the draft is gone.
func (s *Store) VersionsOf(ctx context.Context, draft string) ([]levigate.Version, error) {
	return s.versions(ctx, `draft = $1 ORDER BY number`, draft)
}

func (s *Store) versions(ctx context.Context, which, arg string) ([]levigate.Version, error) {
	out := []levigate.Version{}
	err := s.read(ctx, "reading the versions", func(tx *sql.Tx) error {
		return eachVersion(ctx, tx, func(v *levigate.Version) error { out = append(out, *v); return nil }, `WHERE `+which, arg)
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

func eachVersion(ctx context.Context, tx *sql.Tx, do func(*levigate.Version) error, which string, args ...any) error {
	return each(ctx, tx, func(scan func(...any) error) error {
		v := &levigate.Version{}
		var made, document, materials, check string
		if err := scan(&v.ID, &v.Draft, &v.Number, &v.Revision, &v.Reason, &v.By, &made, &document, &materials, &check, &v.Program, &v.Refdata); err != nil {
			return err
		}
		if check != "" {
			v.Check = json.RawMessage(check)
		}
		var e1, e2, e3 error
		v.At, e1 = timeOf(made)
		v.Document, e2 = decode[levigate.Document](document)
		v.Document = whole(v.Document)
		v.Materials, e3 = decode[map[string]json.RawMessage](materials)
		if err := errors.Join(e1, e2, e3); err != nil {
			return err
		}
		return do(v)
	}, `SELECT `+versionColumns+` FROM versions `+which, args...)
}
