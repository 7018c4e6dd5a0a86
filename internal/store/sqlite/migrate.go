package sqlite

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
	"time"

	"github.com/pressly/goose/v3"
)

//go:embed migrations/*.sql
var files embed.FS

func migrations(db *sql.DB) (*goose.Provider, error) {
	sub, err := fs.Sub(files, "migrations")
	if err != nil {
		return nil, err
	}
	return goose.NewProvider(goose.DialectSQLite3, db, sub, goose.WithLogger(goose.NopLogger()), goose.WithDisableGlobalRegistry(true))
}

// newest is the schema this program knows.
func newest(p *goose.Provider) int64 {
	all := p.ListSources()
	return all[len(all)-1].Version
}

// migrate brings a file to today's schema, never back. Where another program
// does so at the same moment, its work is taken over.
func migrate(ctx context.Context, db *sql.DB, path string) error {
	p, err := migrations(db)
	if err != nil {
		return err
	}
	for try := 0; ; try++ {
		var is int64
		if is, err = p.GetDBVersion(ctx); err == nil {
			if is > newest(p) {
				return newer(path, is, newest(p))
			}
			if is == newest(p) {
				return nil
			}
			if _, err = p.Up(ctx); err == nil {
				return nil
			}
		}
		if try == 5 {
			return fmt.Errorf("bringing the workspace to today's shape: %w", err)
		}
		time.Sleep(20 * time.Millisecond << try)
	}
}

func newer(path string, is, known int64) error {
	return bad(path, fmt.Sprintf("was written by a newer Levigate (its shape is %d, and this one knows %d)", is, known), "take the newer program; this one changes nothing in it", nil)
}
