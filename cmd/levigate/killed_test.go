package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"levigate"
	"levigate/client"
	"levigate/wire"
)

// burst is how many edits two hands make in one round.
const burst = 500

// The program is killed in the middle of a burst of edits, started again on the
// same workspace, and what it had not acknowledged is sent again: each edit is
// there once. Then it is killed once more, and verify looks at what it left.
// LEVIGATE_LONG=1 does so two hundred times, on a workspace that grows.
func TestKilledWhileServing(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no SIGKILL, and may hold the file of a program it has ended for a while; the store's own kill test runs there")
	}
	rounds := 3
	long := os.Getenv("LEVIGATE_LONG") != ""
	if long {
		rounds = 200
	}
	bin, dir := built(t), filepath.Join(t.TempDir(), "w")
	seed := time.Now().UnixNano()
	random := rand.New(rand.NewPCG(uint64(seed), 1))
	kept, again, clashes := 0, 0, 0
	for i := range rounds {
		r := &round{t: t, bin: bin, dir: dir, draft: fmt.Sprintf("round-%04d", i)}
		r.play(random.IntN(burst), time.Duration(random.IntN(20_000))*time.Microsecond)
		for _, h := range r.hands {
			again, clashes = again+h.again, clashes+len(h.refused)
		}
		kept += burst
		if v := verified(t, bin, dir); !strings.Contains(v, fmt.Sprintf(", %d edits,", kept)) {
			t.Errorf("%d edits were acknowledged; verify says %s", kept, v)
		}
		if t.Failed() {
			t.Fatalf("in round %d, seed %d", i, seed)
		}
	}
	t.Logf("%d rounds, %d edits acknowledged, %d clashes, %d edits kept whose answer was lost", rounds, kept, clashes, again)
	if clashes == 0 {
		t.Error("the hands never met in the shared row")
	}
	if long && again == 0 {
		t.Error("no answer was ever lost: the program was not killed in the middle of an edit")
	}
}

// built is the program as it is shipped, and not this test standing in for it.
func built(t *testing.T) string {
	t.Helper()
	bin := filepath.Join(t.TempDir(), "levigate")
	if out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	return bin
}

// verified is what levigate verify says; a fault ends the test.
func verified(t *testing.T, bin, dir string) string {
	t.Helper()
	out, err := exec.Command(bin, "verify", "--workspace", dir).CombinedOutput()
	if err != nil {
		t.Fatalf("verify: %v\n%s", err, out)
	}
	return string(out)
}

// serving is one run of levigate serve.
type serving struct {
	cmd  *exec.Cmd
	errs bytes.Buffer
	*client.Client
}

func serve(t *testing.T, bin, dir string) *serving {
	t.Helper()
	s := &serving{cmd: exec.Command(bin, "serve", "--addr", "127.0.0.1:0", "--workspace", dir)}
	s.cmd.Stderr = &s.errs
	out, err := s.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.kill)
	line, err := bufio.NewReader(out).ReadString('\n')
	address, ok := strings.CutPrefix(strings.TrimSpace(line), "Levigate at ")
	if err != nil || !ok {
		s.kill()
		t.Fatalf("said %q, %v; %s", line, err, &s.errs)
	}
	if s.Client, err = client.At(address); err != nil {
		t.Fatal(err)
	}
	s.HTTP = &http.Client{Transport: &http.Transport{}, Timeout: 30 * time.Second}
	return s
}

// kill is SIGKILL where there are signals: nothing is put in order. A second
// time does nothing.
func (s *serving) kill() {
	s.cmd.Process.Kill()
	s.cmd.Wait()
}

// round is one burst into a draft of its own.
type round struct {
	t               *testing.T
	bin, dir, draft string
	began           levigate.Document
	hands           []*hand
}

// play makes the burst, kills after so many answers and a while, and makes what
// is left of it on a program started anew.
func (r *round) play(answers int, while time.Duration) {
	s := serve(r.t, r.bin, r.dir)
	r.began = levigate.Document{Lines: []levigate.Row{{ID: "shared", Cells: map[string]string{"material": "Glycerin", "percent": "40"}}}}
	if _, err := s.CreateDraft(r.t.Context(), r.draft, r.began); err != nil {
		r.t.Fatal(err)
	}
	for _, name := range []string{"left", "right"} {
		r.hands = append(r.hands, &hand{name: r.draft + "-" + name, draft: r.draft, acknowledged: map[string]int64{}, refused: map[string]bool{}})
	}
	enough, over := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(over)
		<-enough
		time.Sleep(while)
		s.kill()
	}()
	answered, limit := atomic.Int64{}, int64(max(answers, 1))
	stopped := r.work(s, func() {
		if answered.Add(1) == limit {
			close(enough)
		}
	})
	if n := answered.Load(); n < limit {
		r.t.Fatalf("after %d edits nobody answered, and it was not killed: %v; %s", n, stopped, &s.errs)
	}
	<-over

	s = serve(r.t, r.bin, r.dir)
	r.hold(s)
	for _, err := range r.work(s, func() {}) {
		r.t.Errorf("after the restart: %v", err)
	}
	r.hold(s)
	s.kill()
}

// work lets both hands write at once, and gives what stopped them.
func (r *round) work(s *serving, answered func()) []error {
	stopped := make([]error, len(r.hands))
	var both sync.WaitGroup
	for i, h := range r.hands {
		both.Go(func() { stopped[i] = h.write(r.t.Context(), s.Client, answered) })
	}
	both.Wait()
	var out []error
	for _, err := range stopped {
		// The program's own refusals are faults whenever they come; that nobody
		// answers is one only for who asks.
		if _, refusal := errors.AsType[*levigate.Error](err); refusal {
			r.t.Errorf("refused: %v", err)
		} else if err != nil {
			out = append(out, err)
		}
	}
	return out
}

// hold holds what is kept to what was acknowledged.
func (r *round) hold(s *serving) {
	opened, err := s.Draft(r.t.Context(), r.draft)
	if err != nil {
		r.t.Fatal(err, &s.errs)
	}
	log, err := s.CommandsAfter(r.t.Context(), r.draft, 0)
	if err != nil {
		r.t.Fatal(err, &s.errs)
	}
	for _, fault := range faultsIn(r.hands, r.began, opened.Draft, log.Commands) {
		r.t.Error(fault)
	}
}

// hand makes edits one after the other, each until it is answered. It writes in
// rows of its own and, every fourth time, in a cell that the other writes too.
type hand struct {
	name, draft  string
	made         int // edits acknowledged
	row, note    string
	shared       string // what it saw last in the shared cell
	revision     int64
	sent         *wire.NewCommand // and not answered
	acknowledged map[string]int64
	refused      map[string]bool
	again        int // acknowledged only when sent again, and kept before
}

// write makes the rest of the hand's edits; it stops where nobody answers.
func (h *hand) write(ctx context.Context, c *client.Client, answered func()) error {
	for h.made < burst/2 {
		if h.sent == nil {
			h.sent = h.next()
		}
		e, err := c.Apply(ctx, h.draft, *h.sent, client.Ask{})
		if clash, ok := errors.AsType[*levigate.ClashError](err); ok {
			// The other hand was first. What it wrote is seen now, and the edit
			// made anew under an id of its own.
			h.refused[h.sent.ID] = true
			h.shared, h.revision, h.sent = clash.Clashes[0].Now, clash.Revision, nil
			continue
		}
		if err != nil {
			return err
		}
		h.took(e)
		answered()
	}
	return nil
}

func (h *hand) next() *wire.NewCommand {
	id := fmt.Sprintf("%s-%03d-%d", h.name, h.made, len(h.refused))
	ch := wire.NewChange{Do: "set", List: "lines", Row: h.row, Field: "note", From: h.note, To: id}
	switch {
	case h.made%25 == 0:
		ch = wire.NewChange{Do: "insert", List: "lines", Row: id, Cells: map[string]string{"material": "Glycerin", "percent": "1"}}
	case h.made%4 == 3:
		ch = wire.NewChange{Do: "set", List: "lines", Row: "shared", Field: "note", From: h.shared, To: id}
	}
	return &wire.NewCommand{ID: id, Base: h.revision, Label: "edit " + id, Changes: []wire.NewChange{ch}}
}

// took notes that the edit sent was acknowledged.
func (h *hand) took(e *wire.Edited) {
	switch ch := h.sent.Changes[0]; {
	case ch.Do == "insert":
		h.row, h.note = ch.Row, ""
	case ch.Row == "shared":
		h.shared = ch.To
	default:
		h.note = ch.To
	}
	h.acknowledged[h.sent.ID] = e.Revision
	h.revision, h.sent = e.Revision, nil
	h.made++
	if e.Again {
		h.again++
	}
}
