package sqlite

import (
	"context"
	"database/sql"
	"slices"
	"strings"
)

// schemaKnown refuses a file that has anything in it but the tables and indexes
// which this program makes, word for word: no trigger, no view, no column more.
func schemaKnown(ctx context.Context, tx *sql.Tx, shown string) error {
	is, err := objects(ctx, tx)
	if err != nil {
		return err
	}
	for _, o := range is {
		if kind, _, _ := strings.Cut(o, " "); kind != "table" && kind != "index" {
			return bad(shown, "holds a "+cut(o)+", which Levigate never makes", "do not use this file; ask whoever gave it to you", nil)
		}
	}
	if !slices.ContainsFunc(is, func(o string) bool { return strings.HasPrefix(o, "table goose_db_version ") }) {
		return bad(shown, "does not say what shape it has", "name a file that levigate backup made", nil)
	}
	var version int64
	if err := tx.QueryRowContext(ctx, `SELECT coalesce(max(version_id), 0) FROM goose_db_version`).Scan(&version); err != nil {
		return err
	}
	known, ought, err := schemaAt(ctx, version)
	switch {
	case err != nil:
		return err
	case version > known:
		return newer(shown, version, known)
	}
	for _, o := range is {
		if !slices.Contains(ought, o) {
			return bad(shown, "holds a "+cut(o)+" that is not as Levigate makes it", "name a file that levigate backup made", nil)
		}
	}
	for _, o := range ought {
		if !slices.Contains(is, o) {
			return bad(shown, "lacks the "+cut(o), "name a file that levigate backup made", nil)
		}
	}
	return nil
}

// cut is what kind of thing and its name, without its text.
func cut(object string) string {
	words := strings.SplitN(object, " ", 3)
	return strings.Join(words[:min(2, len(words))], " ")
}

// objects lists what a schema has, each as "kind name text".
func objects(ctx context.Context, tx *sql.Tx) ([]string, error) {
	return rowsOf(ctx, tx, `SELECT type, name, sql FROM sqlite_master ORDER BY type, name`)
}

// schemaAt makes the schema of a version in memory; it is empty for one that is
// not known.
func schemaAt(ctx context.Context, version int64) (known int64, out []string, err error) {
	db, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return 0, nil, err
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	p, err := migrations(db)
	if err != nil {
		return 0, nil, err
	}
	if known = newest(p); version > known || version < 0 {
		return known, nil, nil
	}
	if _, err := p.UpTo(ctx, version); err != nil {
		return known, nil, err
	}
	err = inTx(ctx, db, func(tx *sql.Tx) error {
		out, err = objects(ctx, tx)
		return err
	})
	return known, out, err
}
