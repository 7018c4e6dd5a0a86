package sqlite

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"levigate"
)

// crashDir makes the test binary a program that edits a workspace until it is
// killed.
const crashDir = "LEVIGATE_TEST_CRASH_DIR"

func TestMain(m *testing.M) {
	if dir := os.Getenv(crashDir); dir != "" {
		editUntilKilled(dir, os.Getenv(crashDir+"_ROUND"))
	}
	os.Exit(m.Run())
}

// editUntilKilled says of each thing it did that it was acknowledged, on a line
// of its own.
func editUntilKilled(dir, round string) {
	s, err := Open(dir)
	must := func(err error) {
		if err != nil {
			fmt.Println("failed", err)
			os.Exit(1)
		}
	}
	must(err)
	background := context.Background()
	for i := 0; ; i++ {
		id := fmt.Sprintf("%s-%d", round, i)
		var a *levigate.Applied
		switch i % 7 {
		case 5:
			a, err = s.Undo(background, "d", id, "")
		case 6:
			a, err = s.Redo(background, "d", id, "")
		default:
			changes := []levigate.Change{
				{Do: levigate.Insert, List: "making", Row: id, Cells: map[string]string{"text": id}},
				{Do: levigate.Insert, List: "lines", Row: id, Cells: map[string]string{"note": strings.Repeat(id, 20)}},
			}
			d, err := s.Draft(background, "d")
			must(err)
			if n := len(d.Document.Lines); n > 20 {
				changes = append(changes, levigate.Change{Do: levigate.Remove, List: "lines", Row: d.Document.Lines[n-1].ID},
					levigate.Change{Do: levigate.Remove, List: "making", Row: d.Document.Making[n-1].ID})
			}
			a, err = s.Apply(background, &levigate.Command{ID: id, Draft: "d", Changes: changes})
			must(err)
		}
		must(err)
		if a != nil {
			fmt.Println("applied", id, a.Revision)
		}
		if i%5 == 0 {
			must(s.AddRecord(background, &levigate.Record{ID: id, Kind: "reading", Body: []byte(id)}))
			fmt.Println("recorded", id)
		}
	}
}

// A program is killed at any moment, again and again, on the same workspace.
// What it had acknowledged is there once; what it had not is there whole or not
// at all. LEVIGATE_LONG=1 does so two hundred times.
//
// What this can't show is a machine that loses its current: the system keeps
// what a killed program had written. For that the file is synced at each commit.
func TestKilled(t *testing.T) {
	rounds := 3
	if os.Getenv("LEVIGATE_LONG") != "" {
		rounds = 200
	}
	dir := filepath.Join(t.TempDir(), "w")
	s := opened(t, dir)
	if err := s.CreateDraft(t.Context(), &levigate.Draft{ID: "d"}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	applied, recorded := map[string]int64{}, map[string]bool{}
	seed := time.Now().UnixNano()
	random := rand.New(rand.NewPCG(uint64(seed), 1))
	for round := range rounds {
		killed(t, dir, fmt.Sprint(round), time.Duration(random.IntN(120_000))*time.Microsecond, applied, recorded)
		held(t, dir, applied, recorded)
		if t.Failed() {
			t.Fatalf("after round %d, seed %d", round, seed)
		}
	}
	t.Logf("%d rounds, %d edits and %d records acknowledged", rounds, len(applied), len(recorded))
	if len(applied) < 10*rounds {
		t.Errorf("only %d edits in %d rounds: nothing much was killed", len(applied), rounds)
	}
}

// A program killed while the log is taken into the file may leave the first page
// ahead of the rest, so that the file is shorter than it says. The log beside it
// still holds everything. Killing at random meets this about once in a hundred
// times; here it is made.
func TestKilledWhileTheLogIsTakenIn(t *testing.T) {
	s := opened(t, filepath.Join(t.TempDir(), "w"))
	fill(t, s)
	copyOf := func(path string) []byte {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	file, log := copyOf(s.Path()), copyOf(s.Path()+"-wal")
	if _, err := s.writer.Exec(`PRAGMA wal_checkpoint(TRUNCATE)`); err != nil {
		t.Fatal(err)
	}
	taken := copyOf(s.Path())
	if len(log) == 0 || len(file) >= len(taken) {
		t.Fatalf("nothing was left to take in: %d and %d bytes, %d of them logged", len(file), len(taken), len(log))
	}
	copy(taken[4096:], file[min(4096, len(file)):])
	for _, n := range []int{4096, 4096 * 2, 4096*2 + 1000} {
		dir := put(t, File, taken[:n])
		if err := os.WriteFile(filepath.Join(dir, File+"-wal"), log, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(dir)
		if err != nil {
			t.Errorf("%d bytes: %v", n, err)
			continue
		}
		c, err := s.Check(t.Context())
		if err != nil || c.Commands != 3 || c.Records != 5 || len(c.Faults) > 0 {
			t.Errorf("%d bytes: %+v %v", n, c, err)
		}
		s.Close()
	}
}

// killed runs one round: it waits for the first edit, then for a while, kills,
// and reads what had been said by then.
func killed(t *testing.T, dir, round string, after time.Duration, applied map[string]int64, recorded map[string]bool) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), crashDir+"="+dir, crashDir+"_ROUND="+round)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewReader(out)
	for started := false; ; {
		line, err := lines.ReadString('\n')
		if err == io.EOF {
			break // a line cut short was not said
		}
		if err != nil {
			t.Fatal(err)
		}
		if !started {
			started = true
			time.AfterFunc(after, func() { cmd.Process.Kill() })
		}
		var word, id string
		var revision int64
		fmt.Sscan(line, &word, &id, &revision)
		switch word {
		case "applied":
			applied[id] = revision
		case "recorded":
			recorded[id] = true
		default:
			t.Errorf("round %s: %s", round, line)
		}
	}
	cmd.Wait()
}

// held opens the workspace and holds it to what was acknowledged.
func held(t *testing.T, dir string, applied map[string]int64, recorded map[string]bool) {
	s := opened(t, dir)
	defer s.Close()
	c, err := s.Check(t.Context())
	if err != nil || len(c.Faults) > 0 {
		t.Fatal(err, c)
	}
	log, err := s.CommandsAfter(t.Context(), "d", 0)
	if err != nil {
		t.Fatal(err)
	}
	there, made := map[string]int64{}, levigate.Document{}
	for i, a := range log {
		if a.Revision != int64(i+1) || there[a.Command.ID] != 0 {
			t.Errorf("edit %d is %s at revision %d", i+1, a.Command.ID, a.Revision)
		}
		there[a.Command.ID] = a.Revision
		if _, clashes, err := made.Apply(&a.Command); err != nil || len(clashes) > 0 {
			t.Fatal(err, clashes)
		}
	}
	for id, revision := range applied {
		if there[id] != revision {
			t.Errorf("%s was acknowledged at revision %d and is at %d", id, revision, there[id])
		}
	}
	d, err := s.Draft(t.Context(), "d")
	if err != nil {
		t.Fatal(err)
	}
	is, _ := encode(d.Document)
	if ought, _ := encode(whole(made)); is != ought || d.Revision != int64(len(log)) {
		t.Errorf("the formula is not what its edits make: revision %d of %d\n%.300s\n%.300s", d.Revision, len(log), is, ought)
	}
	for id := range recorded {
		if _, err := s.Record(t.Context(), id); err != nil {
			t.Errorf("the record %s was acknowledged: %v", id, err)
		}
	}
}
