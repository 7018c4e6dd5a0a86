package sqlite

import (
	"context"
	"database/sql"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"levigate"
)

func TestOpenMakesItForItsOwnerOnly(t *testing.T) {
	// A name with everything in it that an address would take amiss.
	dir := filepath.Join(t.TempDir(), "a b?c#d%20é&_pragma=x", "levigate")
	s := opened(t, dir)
	if err := s.CreateDraft(t.Context(), &levigate.Draft{ID: "d"}); err != nil {
		t.Fatal(err)
	}
	for _, p := range []struct {
		path string
		mode os.FileMode
	}{{dir, 0o700}, {s.Path(), 0o600}, {s.Path() + "-wal", 0o600}, {s.Path() + "-shm", 0o600}} {
		info, err := os.Stat(p.path)
		if err != nil {
			t.Fatal(err)
		}
		if got := info.Mode().Perm(); runtime.GOOS != "windows" && got != p.mode {
			t.Errorf("%s has the mode %o, want %o", p.path, got, p.mode)
		}
	}
	for pragma, want := range map[string]string{"application_id": applicationText, "journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "trusted_schema": "0"} {
		var got string
		if err := s.writer.QueryRow("PRAGMA " + pragma).Scan(&got); err != nil || got != want {
			t.Errorf("%s is %s, want %s (%v)", pragma, got, want, err)
		}
	}
	if _, err := s.reads.Exec(`DELETE FROM drafts`); err == nil {
		t.Error("a reader could write")
	}
	// One that others may read is taken from their eyes.
	s.Close()
	os.Chmod(s.Path(), 0o644)
	opened(t, dir)
	if info, _ := os.Stat(s.Path()); runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		t.Errorf("mode %o", info.Mode().Perm())
	}
}

// put writes a file into a new folder and gives the folder.
func put(t *testing.T, name string, content []byte) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, name), content, 0o600); err != nil {
		t.Fatal(err)
	}
	return dir
}

// image is the bytes of a workspace that holds a little.
func image(t *testing.T, change func(db *sql.DB)) []byte {
	t.Helper()
	s := opened(t, t.TempDir())
	fill(t, s)
	if change != nil {
		change(s.writer)
	}
	if _, err := s.writer.Exec(`PRAGMA wal_checkpoint(TRUNCATE)`); err != nil {
		t.Fatal(err)
	}
	b, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// fill puts two formulas, three edits, a version and five records in.
func fill(t testing.TB, s *Store) {
	t.Helper()
	ctx := context.Background()
	var errs []error
	for _, id := range []string{"d", "e"} {
		errs = append(errs, s.CreateDraft(ctx, &levigate.Draft{ID: id, Document: levigate.Document{
			Head: map[string]string{"name": "Walnut hand polish"}, Lines: []levigate.Row{{ID: "a", Cells: map[string]string{"percent": "0"}}}}}))
	}
	for i := range 3 {
		_, err := s.Apply(ctx, &levigate.Command{ID: fmt.Sprint("c", i), Draft: "d", Base: int64(i), Changes: []levigate.Change{
			{Do: levigate.Set, List: "lines", Row: "a", Field: "percent", From: fmt.Sprint(i), To: fmt.Sprint(i + 1)}}})
		errs = append(errs, err)
	}
	errs = append(errs, s.Freeze(ctx, &levigate.Version{ID: "v", Draft: "d", Revision: 3, Reason: "trial", Check: []byte(`{}`)}))
	for i := range 5 {
		errs = append(errs, s.AddRecord(ctx, &levigate.Record{ID: fmt.Sprint("r", i+1), Kind: "reading", Subject: levigate.Subject{Kind: "lot", Key: "GL-01"},
			Body: fmt.Appendf(nil, `{"value":%d}`, i), By: "Mara"}))
	}
	if err := errors.Join(errs...); err != nil {
		t.Fatal(err)
	}
}

func TestOpenRefuses(t *testing.T) {
	foreign := image(t, nil)
	binary.BigEndian.PutUint32(foreign[68:], 0)
	for name, c := range map[string]struct {
		dir  string
		want string
	}{
		"a file in the way":     {filepath.Join(put(t, "levigate", nil), "levigate"), "is a file, and a workspace is a folder"},
		"a file above":          {filepath.Join(put(t, "levigate", nil), "levigate", "x"), "can't be made"},
		"text in its place":     {put(t, File, []byte(strings.Repeat("levigate: formula/1\n", 40))), "is no Levigate workspace"},
		"a few bytes":           {put(t, File, []byte("SQLite for")), "is cut short"},
		"another's database":    {put(t, File, foreign), "is a database of another program"},
		"cut short":             {put(t, File, image(t, nil)[:8192]), "is cut short"},
		"of a newer program":    {put(t, File, image(t, func(db *sql.DB) { db.Exec(`INSERT INTO goose_db_version (version_id, is_applied) VALUES (99, 1)`) })), "was written by a newer Levigate"},
		"a folder in its place": {func() string { d := t.TempDir(); os.Mkdir(filepath.Join(d, File), 0o700); return d }(), "is no ordinary file"},
	} {
		s, err := Open(c.dir)
		if err == nil {
			s.Close()
			t.Errorf("%s: opened", name)
			continue
		}
		e, ok := errors.AsType[*levigate.Error](err)
		if !ok || e.Code != levigate.Invalid || !strings.Contains(e.Message, c.want) || e.Help == "" {
			t.Errorf("%s: %v (%+v), want %q", name, err, e, c.want)
		}
	}
}

// A damaged page in the middle is found when all is looked at.
func TestCheckFindsDamage(t *testing.T) {
	b := image(t, nil)
	for i := 4096 * 3; i < 4096*9; i += 7 {
		b[i] ^= 0x5a
	}
	s, err := Open(put(t, File, b))
	if err == nil {
		defer s.Close()
		_, err = s.Check(t.Context())
	}
	if err == nil || !strings.Contains(err.Error(), "damaged") {
		t.Errorf("got %v", err)
	}
}

func TestOpenWhereNobodyMayWrite(t *testing.T) {
	if runtime.GOOS == "linux" {
		_, err := Open("/proc/levigate")
		if err == nil || levigate.CodeOf(err) != levigate.Invalid || !strings.Contains(err.Error(), "can't be made") {
			t.Errorf("a folder of the system: %v", err)
		}
		if _, err := Open("/sys/kernel"); err == nil || !strings.Contains(err.Error(), "can't be written") {
			t.Errorf("a file in a folder of the system: %v", err)
		}
	}
	if os.Geteuid() <= 0 {
		t.Log("folders closed to their owner were not tried: this user may write everywhere")
		return
	}
	dir := t.TempDir()
	os.Chmod(dir, 0o500)
	defer os.Chmod(dir, 0o700)
	if _, err := Open(dir); err == nil || !strings.Contains(err.Error(), "can't be written") {
		t.Errorf("a closed folder: %v", err)
	}
	ours := filepath.Join(t.TempDir(), "w")
	opened(t, ours).Close()
	os.Chmod(filepath.Join(ours, File), 0o400)
	if _, err := Open(ours); err == nil || !strings.Contains(err.Error(), "can't be written") {
		t.Errorf("a closed file: %v", err)
	}
}

// Several programs may start at once on a new folder.
func TestOpenAtOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "w")
	var all sync.WaitGroup
	for i := range 6 {
		all.Go(func() {
			s, err := Open(dir)
			if err != nil {
				t.Error(err)
				return
			}
			defer s.Close()
			if err := s.CreateDraft(t.Context(), &levigate.Draft{ID: fmt.Sprint("d", i)}); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	found, err := opened(t, dir).ListDrafts(t.Context(), "", 0)
	if err != nil || len(found) != 6 {
		t.Errorf("%d formulas, %v", len(found), err)
	}
}

// No room on the disk: the edit is refused with its reason, everything before it
// stays, and it goes on once there is room.
func TestNoRoom(t *testing.T) {
	s := opened(t, t.TempDir())
	fill(t, s)
	var pages int
	if err := s.writer.QueryRow(`PRAGMA page_count`).Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if _, err := s.writer.Exec(fmt.Sprint(`PRAGMA max_page_count = `, pages+2)); err != nil {
		t.Fatal(err)
	}
	big := func(i int) *levigate.Command {
		return &levigate.Command{ID: fmt.Sprint("big", i), Draft: "d", Changes: []levigate.Change{
			{Do: levigate.Insert, List: "lines", Row: fmt.Sprint("n", i), Cells: map[string]string{"note": strings.Repeat("x", 6000)}}}}
	}
	var err error
	kept := 0
	for ; kept < 20 && err == nil; kept++ {
		_, err = s.Apply(t.Context(), big(kept))
	}
	e, ok := errors.AsType[*levigate.Error](err)
	if !ok || !strings.Contains(e.Message, "no room on the disk") || e.Help == "" {
		t.Fatalf("%d kept, then %v", kept-1, err)
	}
	c, err := s.Check(t.Context())
	if err != nil || c.Commands != 3+kept-1 {
		t.Fatalf("%v %+v, kept %d", err, c, kept-1)
	}
	if _, err := s.writer.Exec(`PRAGMA max_page_count = 100000`); err != nil {
		t.Fatal(err)
	}
	if a, err := s.Apply(t.Context(), big(kept-1)); err != nil || a.Again {
		t.Errorf("with room again: %+v %v", a, err)
	}
}

// The migrations lead there, back and there again, and the last shape is the
// first.
func TestMigrations(t *testing.T) {
	db, err := sql.Open("sqlite", "file:"+filepath.ToSlash(filepath.Join(t.TempDir(), "m.db")))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	p, err := migrations(db)
	if err != nil {
		t.Fatal(err)
	}
	shape := func() (out []string) {
		if err := inTx(t.Context(), db, func(tx *sql.Tx) (err error) { out, err = objects(t.Context(), tx); return err }); err != nil {
			t.Fatal(err)
		}
		return out
	}
	var first []string
	for range 2 {
		if _, err := p.Up(t.Context()); err != nil {
			t.Fatal(err)
		}
		up := shape()
		if first != nil && !slices.Equal(up, first) {
			t.Errorf("up again gives\n%s\nwas\n%s", strings.Join(up, "\n"), strings.Join(first, "\n"))
		}
		first = up
		if _, ought, err := schemaAt(t.Context(), newest(p)); err != nil || !slices.Equal(up, ought) {
			t.Errorf("%v: on disk\n%s\nin memory\n%s", err, strings.Join(up, "\n"), strings.Join(ought, "\n"))
		}
		if _, err := p.DownTo(t.Context(), 0); err != nil {
			t.Fatal(err)
		}
		for _, o := range shape() {
			if !strings.Contains(o, "goose_db_version") && !strings.Contains(o, "sqlite_") {
				t.Errorf("down leaves %s", o)
			}
		}
	}
}

// A file that is deleted, moved or replaced under the program takes no more
// edits: they would be gone at the next start.
func TestFileTakenAway(t *testing.T) {
	for _, take := range []func(path string) error{
		os.Remove,
		func(path string) error { return os.Rename(path, path+".old") },
		func(path string) error {
			return errors.Join(os.Rename(path, path+".old"), os.WriteFile(path, nil, 0o600))
		},
	} {
		s := opened(t, t.TempDir())
		fill(t, s)
		if err := take(s.path); err != nil {
			t.Skip("the system holds open files fast: ", err)
		}
		_, err := s.Apply(t.Context(), &levigate.Command{ID: "late", Draft: "d", Changes: []levigate.Change{
			{Do: levigate.Insert, List: "lines", Row: "late", Cells: map[string]string{"note": "x"}}}})
		e, ok := errors.AsType[*levigate.Error](err)
		if !ok || e.Code != levigate.Internal || !strings.Contains(e.Message, "not kept") || e.Help == "" {
			t.Errorf("%v", err)
		}
	}
}
