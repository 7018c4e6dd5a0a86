package sqlite

import (
	"path/filepath"
	"strings"
	"testing"

	"levigate"
	"levigate/internal/store/storetest"
)

func TestStore(t *testing.T) {
	base := t.TempDir()
	storetest.Run(t, func(t *testing.T) levigate.Store {
		return opened(t, filepath.Join(base, strings.ReplaceAll(t.Name(), "/", "-")))
	})
}

func opened(t testing.TB, dir string) *Store {
	t.Helper()
	s, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}
