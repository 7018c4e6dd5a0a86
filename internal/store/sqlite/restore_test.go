package sqlite

import (
	"context"
	"database/sql"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"levigate"
)

func restoring(replace bool) Restoring {
	return Restoring{Replace: replace, Now: time.Now}
}

func TestBackupAndRestore(t *testing.T) {
	s := opened(t, t.TempDir())
	fill(t, s)
	to := filepath.Join(t.TempDir(), "copy of mine.db")
	// Others go on writing meanwhile.
	stop, stopped := make(chan struct{}), make(chan int)
	go func() {
		n := 0
		for ; ; n++ {
			select {
			case <-stop:
				stopped <- n
				return
			default:
				if err := s.AddRecord(context.Background(), &levigate.Record{ID: fmt.Sprint("w", n), Kind: "reading"}); err != nil {
					t.Error(err)
				}
			}
		}
	}()
	c, err := s.Backup(t.Context(), to)
	close(stop)
	n := <-stopped
	if err != nil || c.Drafts != 2 || c.Commands != 3 || c.Versions != 1 || c.Records < 5 || c.Records > 5+n || len(c.Faults) > 0 {
		t.Fatalf("%+v %v, %d written meanwhile", c, err, n)
	}
	if info, _ := os.Stat(to); info.Mode().Perm()&0o077 != 0 {
		t.Errorf("others may read the backup: %o", info.Mode().Perm())
	}
	before, _ := os.ReadFile(to)
	if _, err := s.Backup(t.Context(), to); err == nil || !strings.Contains(err.Error(), "overwrites nothing") {
		t.Errorf("a second time: %v", err)
	}
	if after, _ := os.ReadFile(to); string(after) != string(before) {
		t.Error("the refused backup wrote into the file")
	}
	if _, err := s.Backup(t.Context(), filepath.Join(t.TempDir(), "none", "x.db")); err == nil {
		t.Error("a backup into no folder")
	}

	// Into a new folder.
	dir := filepath.Join(t.TempDir(), "w")
	r, err := Restore(t.Context(), dir, to, restoring(false))
	if err != nil || r.Kept != "" || r.Contents.Drafts != 2 {
		t.Fatalf("%+v %v", r, err)
	}
	same(t, dir, c)
	// Over one that holds something: not unasked, nor while it is open.
	other := opened(t, dir)
	if _, err := other.Apply(t.Context(), &levigate.Command{ID: "mine", Draft: "e", Changes: []levigate.Change{{Do: levigate.Remove, List: "lines", Row: "a"}}}); err != nil {
		t.Fatal(err)
	}
	if _, err := Restore(t.Context(), dir, to, restoring(false)); levigate.CodeOf(err) != levigate.Conflict || !strings.Contains(err.Error(), "holds formulas (2)") {
		t.Errorf("unasked: %v", err)
	}
	if _, err := Restore(t.Context(), dir, to, restoring(true)); levigate.CodeOf(err) != levigate.Conflict || !strings.Contains(err.Error(), "is open in another program") {
		t.Errorf("while open: %v", err)
	}
	if _, err := other.Draft(t.Context(), "e"); err != nil {
		t.Errorf("the open workspace suffered: %v", err)
	}
	other.Close()
	r, err = Restore(t.Context(), dir, to, restoring(true))
	if err != nil || r.Kept == "" {
		t.Fatalf("%+v %v", r, err)
	}
	same(t, dir, c)
	// The old one is whole.
	old := t.TempDir()
	b, err := os.ReadFile(r.Kept)
	if err != nil || os.WriteFile(filepath.Join(old, File), b, 0o600) != nil {
		t.Fatal(err)
	}
	if d, err := opened(t, old).Draft(t.Context(), "e"); err != nil || d.Revision != 1 {
		t.Errorf("the old file lost an edit: %+v %v", d, err)
	}
	left, _ := filepath.Glob(filepath.Join(dir, ".levigate-*"))
	if len(left) > 0 {
		t.Errorf("left lying: %v", left)
	}
}

func same(t *testing.T, dir string, want *Contents) {
	t.Helper()
	s := opened(t, dir)
	defer s.Close()
	c, err := s.Check(t.Context())
	if err != nil || c.Drafts != want.Drafts || c.Commands != want.Commands || c.Records != want.Records || c.Head != want.Head || len(c.Faults) > 0 {
		t.Fatalf("%+v %v, want %+v", c, err, want)
	}
	if info, err := os.Stat(s.Path()); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("others may read the workspace: %v", info.Mode())
	}
	if _, err := s.Undo(t.Context(), "d", fmt.Sprint("u", time.Now().UnixNano()), ""); err != nil {
		t.Error(err)
	}
	if err := s.AddRecord(t.Context(), &levigate.Record{ID: "next", Kind: "reading"}); err != nil {
		t.Error(err)
	}
	if faults, err := s.Verify(t.Context()); err != nil || len(faults) > 0 {
		t.Error(faults, err)
	}
}

func TestRestoreRefuses(t *testing.T) {
	good := image(t, nil)
	random := make([]byte, 40_000)
	for i, r := 0, rand.New(rand.NewPCG(1, 2)); i < len(random); i++ {
		random[i] = byte(r.Uint32())
	}
	exec := func(queries ...string) []byte {
		return image(t, func(db *sql.DB) {
			for _, q := range queries {
				if _, err := db.Exec(q); err != nil {
					t.Fatal(q, err)
				}
			}
		})
	}
	torn := append([]byte{}, good...)
	for i := 4096 * 4; i < 4096*8; i++ {
		torn[i] = 0xff
	}
	for name, c := range map[string]struct {
		content []byte
		want    string
	}{
		"empty":                 {nil, "is empty"},
		"random":                {random, "is no Levigate workspace or backup"},
		"cut within its head":   {good[:50], "is cut short"},
		"cut at a page":         {good[:4096*5], "is cut short"},
		"cut within a page":     {good[:len(good)-100], "is cut short"},
		"another's":             {exec(`PRAGMA application_id = 12`), "is a database of another program"},
		"newer":                 {exec(`INSERT INTO goose_db_version (version_id, is_applied) VALUES (99, 1)`), "newer Levigate"},
		"torn":                  {torn, "is damaged"},
		"a trigger":             {exec(`CREATE TRIGGER t AFTER INSERT ON records BEGIN DELETE FROM records; END`), "holds a trigger t"},
		"a view":                {exec(`CREATE VIEW sneaky AS SELECT 1`), "holds a view sneaky"},
		"a table":               {exec(`CREATE TABLE extra (x)`), "holds a table extra"},
		"a column":              {exec(`ALTER TABLE drafts ADD COLUMN x TEXT`), "holds a table drafts"},
		"a table gone":          {exec(`DROP TABLE versions`), "lacks the"},
		"a view for a table":    {exec(`ALTER TABLE goose_db_version RENAME TO g`, `CREATE VIEW goose_db_version AS SELECT * FROM g`), "holds a view goose_db_version"},
		"no shape":              {exec(`DROP TABLE goose_db_version`), "does not say what shape it has"},
		"a stray edit":          {exec(`PRAGMA foreign_keys = 0`, `INSERT INTO commands VALUES ('x', 'nobody', 1, 'done', '', '{}', '[]')`), "foreign_key_check"},
		"a formula that is not": {exec(`UPDATE documents SET body = 'nothing' WHERE draft = 'e'`), `the formula "e" can't be read`},
		"an edit gone":          {exec(`DELETE FROM commands WHERE id = 'c1'`), "is at revision 3 and has 2 edits"},
		"an edit that is not":   {exec(`UPDATE commands SET command = '[]' WHERE id = 'c1'`), `the edit "c1" can't be read`},
		"a version that is not": {exec(`UPDATE versions SET assessment = '{' WHERE id = 'v'`), `the version "v" can't be read`},
		"a record edited":       {exec(`UPDATE records SET author = 'x' WHERE id = 'r2'`), "changed after they were made (1; the first: r2 was edited"},
	} {
		file := filepath.Join(put(t, "backup.db", c.content), "backup.db")
		dir := filepath.Join(t.TempDir(), "w")
		_, err := Restore(t.Context(), dir, file, restoring(true))
		if err == nil || levigate.CodeOf(err) == levigate.Internal || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "backup.db") {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
		if left, _ := os.ReadDir(dir); len(left) > 0 {
			t.Errorf("%s: refused, and yet there is %v", name, left)
		}
		if after, _ := os.ReadFile(file); string(after) != string(c.content) {
			t.Errorf("%s: the file was written into", name)
		}
	}
	if _, err := Restore(t.Context(), t.TempDir(), "nowhere.db", restoring(true)); levigate.CodeOf(err) != levigate.NotFound {
		t.Errorf("no file: %v", err)
	}
	if _, err := Restore(t.Context(), t.TempDir(), t.TempDir(), restoring(true)); levigate.CodeOf(err) != levigate.Invalid {
		t.Errorf("a folder: %v", err)
	}
	s := opened(t, t.TempDir())
	fill(t, s)
	if _, err := Restore(t.Context(), t.TempDir(), s.Path(), restoring(true)); err == nil || !strings.Contains(err.Error(), "belongs to an open workspace") {
		t.Errorf("an open workspace: %v", err)
	}
	s.Close()
	if _, err := Restore(t.Context(), filepath.Dir(s.Path()), s.Path(), restoring(true)); err == nil || !strings.Contains(err.Error(), "is the workspace itself") {
		t.Errorf("itself: %v", err)
	}
	// A chain with faults is brought back where that was asked for.
	faulty := filepath.Join(put(t, "backup.db", exec(`UPDATE records SET author = 'x' WHERE id = 'r2'`)), "backup.db")
	how := restoring(false)
	how.Faulty = true
	if r, err := Restore(t.Context(), filepath.Join(t.TempDir(), "w"), faulty, how); err != nil || len(r.Contents.Faults) != 1 {
		t.Errorf("%+v %v", r, err)
	}
}

// A workspace that can't be opened any more is replaced, and kept with
// everything beside it.
func TestRestoreOverDamage(t *testing.T) {
	dir := put(t, File, []byte("this was a database once"))
	if err := os.WriteFile(filepath.Join(dir, File+"-wal"), []byte("its last edits"), 0o600); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(put(t, "backup.db", image(t, nil)), "backup.db")
	if _, err := Restore(t.Context(), dir, file, restoring(false)); levigate.CodeOf(err) != levigate.Conflict {
		t.Errorf("unasked: %v", err)
	}
	r, err := Restore(t.Context(), dir, file, restoring(true))
	if err != nil {
		t.Fatal(err)
	}
	for ending, want := range map[string]string{"": "this was a database once", "-wal": "its last edits"} {
		if b, err := os.ReadFile(r.Kept + ending); err != nil || string(b) != want {
			t.Errorf("kept%s: %q %v", ending, b, err)
		}
	}
	if _, err := opened(t, dir).Draft(t.Context(), "d"); err != nil {
		t.Error(err)
	}
}

// Whatever bytes are given out as a backup, they are refused with words or they
// are one.
func FuzzExamine(f *testing.F) {
	dir := f.TempDir()
	s, err := Open(dir)
	if err != nil {
		f.Fatal(err)
	}
	fill(f, s)
	if _, err := s.Backup(context.Background(), filepath.Join(dir, "b")); err != nil {
		f.Fatal(err)
	}
	s.Close()
	good, err := os.ReadFile(filepath.Join(dir, "b"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(0, []byte{})
	f.Add(len(good), []byte{})
	for i, at := range []int{16, 18, 28, 56, 68, 100, 105, 4096, 4100, 8192, 20000} {
		f.Add(len(good), []byte{byte(at >> 8), byte(at), byte(i + 1), byte(at >> 8), byte(at + 1), 0xff})
	}
	f.Add(512, []byte{0, 16, 2, 0, 28, 0})
	path := filepath.Join(dir, "x.db")
	f.Fuzz(func(t *testing.T, size int, edits []byte) {
		b := append([]byte{}, good[:min(max(size, 0), len(good))]...)
		for ; len(edits) >= 3 && len(b) > 0; edits = edits[3:] {
			b[(int(edits[0])<<8|int(edits[1]))%len(b)] = edits[2]
		}
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
		defer cancel()
		if _, err := examine(ctx, path, "x"); err != nil && levigate.CodeOf(err) == levigate.Internal {
			t.Fatal(err)
		}
	})
}
