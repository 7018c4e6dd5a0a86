// Package sqlitetest opens the real store for tests of what stands above it.
package sqlitetest

import (
	"testing"

	"levigate"
	"levigate/internal/store/sqlite"
)

// Open is an empty store in a folder of the test's own, closed when it ends.
func Open(tb testing.TB) levigate.Store {
	tb.Helper()
	s, err := sqlite.Open(tb.TempDir())
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { s.Close() })
	return s
}
