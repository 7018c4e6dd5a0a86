package main

import (
	"database/sql"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"levigate"
	"levigate/internal/store/sqlite"
)

// workspace is a folder with a formula and three records in it.
func workspace(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "w")
	s, err := sqlite.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := s.CreateDraft(t.Context(), &levigate.Draft{ID: "d", Document: levigate.Document{Head: map[string]string{"name": "Walnut hand polish"}}}); err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"r1", "r2", "r3"} {
		if err := s.AddRecord(t.Context(), &levigate.Record{ID: id, Kind: "reading", Body: []byte("{}"), By: "Mara"}); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// byHand edits a workspace's file as no part of the program would.
func byHand(t *testing.T, dir, query string) {
	t.Helper()
	db, err := sql.Open("sqlite", filepath.Join(dir, sqlite.File))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if _, err := db.Exec(query); err != nil {
		t.Fatal(err)
	}
}

func (r result) must(t *testing.T, status int, out, errs string) {
	t.Helper()
	if r.status != status || !strings.Contains(r.out, out) || !strings.Contains(r.err, errs) || status > 0 && !strings.Contains(r.err, "  help: ") {
		t.Errorf("status %d, out %q, err %q; want %d, %q, %q", r.status, r.out, r.err, status, out, errs)
	}
}

func TestVerify(t *testing.T) {
	dir := workspace(t)
	r := started(t, "", "verify", "--workspace", dir)
	r.must(t, 0, "1 formula, 0 edits, 0 versions, 3 records", "")
	r.must(t, 0, "No record shows an edit, and none is missing.", "")
	hash := regexp.MustCompile(`Last record: 3, hash ([0-9a-f]{64})`).FindStringSubmatch(r.out)
	if hash == nil {
		t.Fatal(r.out)
	}
	started(t, "", "verify", "--workspace", dir, "--head", hash[1]).must(t, 0, "The hash you noted is that of a record.", "")
	started(t, "", "verify", "--workspace", dir, "--head", strings.Repeat("0", 64)).must(t, 1, "", "no record has the hash you noted")
	started(t, "", "verify", "--workspace", dir, "--head", "12ab").must(t, 2, "", "is not a hash")
	byHand(t, dir, `UPDATE records SET author = 'Ines' WHERE id = 'r2'; DELETE FROM records WHERE id = 'r3'`)
	r = started(t, "", "verify", "--workspace", dir)
	r.must(t, 1, "2 records", "record 2 (r2) was edited")
	r.must(t, 1, "", "the record at place 3 was removed")
	if strings.Contains(r.out, "none is missing") {
		t.Error(r.out)
	}
	none := filepath.Join(t.TempDir(), "none")
	started(t, "", "verify", "--workspace", none).must(t, 2, "", "there is no workspace in "+none)
	if _, err := os.Stat(none); err == nil {
		t.Error("looking made a folder")
	}
	file := write(t, "w", "")
	started(t, "", "verify", "--workspace", file).must(t, 2, "", "is a file, and a workspace is a folder")
}

func TestBackupAndRestore(t *testing.T) {
	dir, folder := workspace(t), t.TempDir()
	file := filepath.Join(folder, "copy.db")
	started(t, "", "backup", file, "--workspace", dir).must(t, 0, "1 formula, 0 edits, 0 versions, 3 records", "")
	started(t, "", "backup", file, "--workspace", dir).must(t, 2, "", "overwrites nothing")
	started(t, "", "restore", file, "--workspace", dir).must(t, 2, "", "holds formulas (1), versions (0), records (3)")
	started(t, "", "restore", file, "--workspace", dir, "--replace").must(t, 0, "is kept as "+filepath.Join(dir, "workspace-before-"), "")
	fresh := filepath.Join(folder, "fresh")
	started(t, "", "restore", file, "--workspace", fresh).must(t, 0, "3 records", "")
	started(t, "", "verify", "--workspace", fresh).must(t, 0, "No record shows an edit, and none is missing.", "")
	started(t, "", "restore", example("HP-01"), "--workspace", fresh, "--replace").must(t, 2, "", "is no Levigate workspace or backup")
	started(t, "", "restore", "nowhere.db", "--workspace", fresh, "--replace").must(t, 2, "", "nowhere.db can't be read")
	// A backup of a chain that was edited is made, and said to be so.
	byHand(t, dir, `DELETE FROM records WHERE id = 'r1'`)
	faulty := filepath.Join(folder, "faulty.db")
	started(t, "", "backup", faulty, "--workspace", dir).must(t, 1, faulty, "the record at place 1 was removed")
	started(t, "", "restore", faulty, "--workspace", filepath.Join(folder, "again")).must(t, 2, "", "changed after they were made")
	started(t, "", "restore", faulty, "--accept-faults", "--workspace", filepath.Join(folder, "again")).must(t, 1, "2 records", "the record at place 1 was removed")
}

// A shell offers formula files where they are read, and any file for a backup.
func TestCompletionOffersBackups(t *testing.T) {
	script := started(t, "", "completion", "bash").out
	for line := range strings.Lines(script) {
		command, _, _ := strings.Cut(strings.TrimSpace(line), ")")
		switch yaml, any := strings.Contains(line, `-X '!*.yaml'`), strings.Contains(line, `-X '!*'`); command {
		case "assess":
			if !yaml || any {
				t.Error(line)
			}
		case "backup", "restore":
			if yaml || !any {
				t.Error(line)
			}
		}
	}
}

// Without --workspace the user's data folder counts.
func TestWorkspaceOfTheUser(t *testing.T) {
	t.Setenv("XDG_DATA_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir())
	t.Setenv("LocalAppData", t.TempDir())
	started(t, "", "verify").must(t, 2, "", "there is no workspace in ")
}
