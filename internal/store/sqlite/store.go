package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"time"

	"levigate"
	"levigate/internal/ledger"
)

// Store is a workspace kept in one file.
type Store struct {
	// Now is the clock; tests set their own before the first call.
	Now func() time.Time

	path          string
	opened        os.FileInfo
	writer, reads *sql.DB
}

var _ levigate.Store = (*Store)(nil)

// Close ends the store. What was acknowledged is on the disk already.
func (s *Store) Close() error { return errors.Join(s.reads.Close(), s.writer.Close()) }

// Path is the file.
func (s *Store) Path() string { return s.path }

// write runs one transaction, all of it or nothing.
func (s *Store) write(ctx context.Context, doing string, do func(*sql.Tx) error) error {
	if err := s.inPlace(); err != nil {
		return err
	}
	return told(ctx, doing, inTx(ctx, s.writer, do))
}

// inPlace refuses to write into a file that has been deleted, moved away or
// replaced while it was open: the system would take every edit, and the next
// start would find none of them.
func (s *Store) inPlace() error {
	now, err := os.Stat(s.path)
	if err == nil && os.SameFile(now, s.opened) {
		return nil
	}
	return &levigate.Error{Code: levigate.Internal, Message: "the workspace's file was deleted, moved or replaced while it was open; the last edit was not kept",
		Help: "end levigate, put the file back or bring back a backup, and start levigate again", Cause: err}
}

// read runs a transaction that sees one moment of the workspace.
func (s *Store) read(ctx context.Context, doing string, do func(*sql.Tx) error) error {
	return told(ctx, doing, inTx(ctx, s.reads, do))
}

func inTx(ctx context.Context, db *sql.DB, do func(*sql.Tx) error) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // nothing once it is committed
	if err := do(tx); err != nil {
		return err
	}
	return tx.Commit()
}

// now is the time in the precision that is kept.
func (s *Store) now() time.Time { return s.Now().UTC().Truncate(time.Microsecond) }

func timeText(t time.Time) string { return t.UTC().Format(ledger.Time) }

func timeOf(text string) (time.Time, error) { return time.Parse(ledger.Time, text) }

// each runs do for every row; do scans it.
func each(ctx context.Context, tx *sql.Tx, do func(scan func(...any) error) error, query string, args ...any) error {
	rows, err := tx.QueryContext(ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := do(rows.Scan); err != nil {
			return err
		}
	}
	return rows.Err()
}
