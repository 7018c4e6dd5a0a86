package client_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"log"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
	"time"

	"levigate"
	"levigate/client"
	"levigate/internal/api"
	"levigate/internal/program"
	"levigate/internal/store/sqlite/sqlitetest"
	"levigate/wire"
)

const token = "a-token-of-this-test"

// running is the real handler over a store in memory, and what it logs.
func running(t *testing.T) (*client.Client, *api.Server, *bytes.Buffer) {
	t.Helper()
	server := httptest.NewUnstartedServer(nil)
	p := program.New()
	var logged bytes.Buffer
	h := api.New(api.Config{Workshop: p, Bench: program.NewBench(p, sqlitetest.Open(t)), Address: server.Listener.Addr().String(),
		Token: token, Log: log.New(&logged, "", 0), Heartbeat: 20 * time.Millisecond})
	server.Config.Handler = h
	server.Start()
	t.Cleanup(func() { h.Close(); server.Close() })
	c, err := client.At(server.URL + "/?token=" + token)
	if err != nil {
		t.Fatal(err)
	}
	return c, h, &logged
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

const tea = `levigate: formula/1
code: T-1
name: Tea polish
product: hand-wash
batch: 500 g
lines:
  - {phase: A, material: Glycerin, percent: 60}
  - {phase: A, material: Maize starch, percent: 10}
  - {phase: A, material: Aqua, qs: true}
`

func set(id, row, field, from, to string) wire.NewCommand {
	return wire.NewCommand{ID: id, Label: "type " + field, Changes: []wire.NewChange{{Do: "set", List: "lines", Row: row, Field: field, From: from, To: to}}}
}

func TestADayAtTheBench(t *testing.T) {
	ctx := context.Background()
	c, _, _ := running(t)
	made := must[*wire.DraftMade](t)(c.CreateFromFile(ctx, "draft-0001", tea))
	if made.Draft.Document.Lines[2].Cells["percent"] != "qs" {
		t.Errorf("%+v", made.Draft.Document)
	}
	if _, err := c.CreateFromFile(ctx, "draft-0001", tea); levigate.CodeOf(err) != levigate.Conflict {
		t.Errorf("the same id again: %v", err)
	}
	opened := must[*wire.DraftOpened](t)(c.Draft(ctx, "draft-0001"))
	k := opened.Check
	if k.Total != "100.00" || k.QS == nil || k.QS.Row != "line-3" || k.QS.Percent != "30.00" || len(k.Problems) > 0 ||
		!slices.Equal(k.Rows, []string{"line-1", "line-2", "line-3"}) || !strings.HasPrefix(k.Answer, "Water activity") {
		t.Errorf("%+v", k)
	}
	if l := k.Lines["line-1"]; l.Grams != "300.00" || l.Kind != "polyol" || l.INCI[0] != "Glycerin" {
		t.Errorf("%+v", l)
	}
	if !slices.Contains(k.Strip, "water.activity") {
		t.Errorf("strip %v", k.Strip)
	}
	edited := must[*wire.Edited](t)(c.Apply(ctx, "draft-0001", set("command-1", "line-1", "percent", "60.00", "65,5 %"), client.Ask{}))
	if edited.Revision != 1 || edited.Again || edited.Check.QS.Percent != "24.50" {
		t.Errorf("%+v", edited)
	}
	again := must[*wire.Edited](t)(c.Apply(ctx, "draft-0001", set("command-1", "line-1", "percent", "60.00", "65,5 %"), client.Ask{}))
	if again.Revision != 1 || !again.Again {
		t.Errorf("sent again: %+v", again)
	}
	_, err := c.Apply(ctx, "draft-0001", set("command-2", "line-1", "percent", "60.00", "70"), client.Ask{})
	if clash, ok := errors.AsType[*levigate.ClashError](err); !ok || clash.Revision != 1 || clash.Clashes[0].Now != "65,5 %" || clash.Clashes[0].Mine != "70" {
		t.Errorf("a clash: %v", err)
	}
	if u := must[*wire.Edited](t)(c.Undo(ctx, "draft-0001", "command-3")); u.Revision != 2 || u.Command.Undoes != "command-1" || u.Check.QS.Percent != "30.00" {
		t.Errorf("%+v", u)
	}
	if u := must[*wire.Edited](t)(c.Undo(ctx, "draft-0001", "command-4")); u.Command != nil || u.Revision != 2 {
		t.Errorf("nothing to undo: %+v", u)
	}
	if r := must[*wire.Edited](t)(c.Redo(ctx, "draft-0001", "command-5")); r.Revision != 3 || r.Check.QS.Percent != "24.50" {
		t.Errorf("%+v", r)
	}
	if l := must[*wire.CommandList](t)(c.CommandsAfter(ctx, "draft-0001", 1)); len(l.Commands) != 2 || l.Commands[0].Revision != 2 {
		t.Errorf("%+v", l)
	}
	if f := must[[]byte](t)(c.File(ctx, "draft-0001")); !strings.Contains(string(f), "percent: 65.5") {
		t.Errorf("%s", f)
	}
	if l := must[*wire.DraftList](t)(c.Drafts(ctx, "TEA", 5)); len(l.Drafts) != 1 || l.Drafts[0].Revision != 3 {
		t.Errorf("%+v", l)
	}
	if err := c.DeleteDraft(ctx, "draft-0001"); err != nil {
		t.Error(err)
	}
	if _, err := c.Draft(ctx, "draft-0001"); levigate.CodeOf(err) != levigate.NotFound {
		t.Errorf("deleted and opened: %v", err)
	}
}

func TestWhatIsBeingTyped(t *testing.T) {
	ctx := context.Background()
	c, _, _ := running(t)
	d := levigate.Document{Head: map[string]string{"product": "hand-wash", "temperature": "30"}, Lines: []levigate.Row{
		{ID: "a", Cells: map[string]string{"material": "Glycerin", "percent": "60"}},
		{ID: "b", Cells: map[string]string{"material": "Glycerinne", "percent": "1o"}},
		{ID: "c"}}}
	k := must[*wire.Check](t)(c.Assess(ctx, d, client.Ask{}))
	if len(k.Problems) != 2 || k.Problems[0].Row != "b" || k.Total != "60.00" || k.QS != nil || k.Assessment.Conditions.Temperature != 30 {
		t.Errorf("%+v", k)
	}
	for _, f := range k.Assessment.Figures {
		if f.ID == "water.total" && (f.State != "missing" || f.Value != nil) {
			t.Errorf("a figure without a line it needs: %+v", f)
		}
	}
	cold := 5.0
	k = must[*wire.Check](t)(c.Assess(ctx, d, client.Ask{Temperature: &cold}))
	if k.Assessment.Conditions.Temperature != 5 {
		t.Errorf("%+v", k.Assessment.Conditions)
	}
	hot := 99.0
	if _, err := c.Assess(ctx, d, client.Ask{Temperature: &hot}); levigate.CodeOf(err) != levigate.Invalid {
		t.Errorf("99 °C: %v", err)
	}
}

func TestWorkingCurvesAndNames(t *testing.T) {
	ctx := context.Background()
	c, _, _ := running(t)
	must[*wire.DraftMade](t)(c.CreateFromFile(ctx, "draft-0001", tea))
	k := must[*wire.Check](t)(c.Check(ctx, "draft-0001", client.Ask{Working: "water.activity", Curves: true}))
	if k.Working == nil || len(k.Working.Steps) == 0 || len(k.Curves) == 0 {
		t.Fatalf("%+v", k)
	}
	if x := k.Curves[0]; x.ID != "water.isotherm" || !strings.HasPrefix(x.SVG, "<svg") || len(x.Table.Rows) == 0 || x.Sentence == "" {
		t.Errorf("%+v", x)
	}
	for _, f := range k.Assessment.Figures {
		if f.Working != nil {
			t.Errorf("%s brings a working nobody asked for", f.ID)
		}
	}
	if m := must[*wire.MaterialList](t)(c.Materials(ctx, "glycer", 3)); len(m.Materials) != 3 || !strings.HasPrefix(m.Materials[0].Name, "Glycerin") {
		t.Errorf("%+v", m)
	}
	for _, id := range []string{"water.activity", "W01", "isotherms/solutes", "Glycerin"} {
		if x, err := c.Explain(ctx, id); err != nil || len(x.Sections) == 0 {
			t.Errorf("%s: %v", id, err)
		}
	}
	if _, err := c.Explain(ctx, "no such thing"); levigate.CodeOf(err) != levigate.NotFound {
		t.Error(err)
	}
}

// A reading is in force from the moment it is kept; a version shows the day it
// was frozen.
func TestReadingsAndVersions(t *testing.T) {
	ctx := context.Background()
	c, _, _ := running(t)
	must[*wire.DraftMade](t)(c.CreateFromFile(ctx, "draft-0001", tea))
	figure := func(k *wire.Check, id string) wire.Figure {
		for _, f := range k.Assessment.Figures {
			if f.ID == id {
				return f
			}
		}
		t.Fatal("no " + id)
		return wire.Figure{}
	}
	before := must[*wire.Check](t)(c.Check(ctx, "draft-0001", client.Ask{}))
	v := must[*wire.VersionMade](t)(c.Freeze(ctx, "draft-0001", wire.NewVersion{ID: "version-1", Reason: "first trial", By: "Ida"}))
	if v.Version.Number != 1 || v.Version.Refdata == "" || v.Version.Program == "" {
		t.Errorf("%+v", v)
	}
	room := 25.0
	for _, r := range []wire.NewReading{
		{ID: "reading-1", Subject: wire.Subject{Kind: "material", Key: "maize STARCH"}, Property: "water", Value: 9, Plus: 0.2, Unit: "%", By: "Ida", Instrument: "oven"},
		{ID: "reading-2", Subject: wire.Subject{Kind: "version", Key: "T-1"}, Property: "water.activity", Value: 0.71, Plus: 0.01, Unit: "1", By: "Ida", Temperature: &room},
	} {
		if m := must[*wire.ReadingMade](t)(c.AddReading(ctx, r)); m.Record.Hash == "" || m.Record.Seq == 0 {
			t.Errorf("%+v", m)
		}
	}
	after := must[*wire.Check](t)(c.Check(ctx, "draft-0001", client.Ask{}))
	if a, b := *figure(before, "water.total").Value, *figure(after, "water.total").Value; a-b < 0.2 || a-b > 0.6 {
		t.Errorf("total water %g, then %g", a, b)
	}
	if f := figure(after, "water.activity"); *f.Value != 0.71 || f.Reading != "reading-2" || f.Calculated == nil {
		t.Errorf("%+v", f)
	}
	if l := must[*wire.ReadingList](t)(c.Readings(ctx, "material", "Maize starch")); len(l.Readings) != 1 || l.Readings[0].Value != 9 {
		t.Errorf("%+v", l)
	}
	old := must[*wire.VersionOpened](t)(c.Version(ctx, "version-1"))
	if len(old.Version.Materials) != 3 || !strings.Contains(string(old.Version.Check), `"water.activity"`) || strings.Contains(string(old.Version.Check), "reading-2") {
		t.Errorf("%d materials", len(old.Version.Materials))
	}
	if l := must[*wire.VersionList](t)(c.Versions(ctx, "draft-0001")); len(l.Versions) != 1 {
		t.Errorf("%+v", l)
	}
	for name, r := range map[string]wire.NewReading{
		"no such property": {ID: "reading-3", Subject: wire.Subject{Kind: "material", Key: "Aqua"}, Property: "colour", Unit: "1", By: "Ida"},
		"no such figure":   {ID: "reading-4", Subject: wire.Subject{Kind: "version", Key: "T-1"}, Property: "water.activty", Unit: "1", By: "Ida"},
		"beyond a hundred": {ID: "reading-5", Subject: wire.Subject{Kind: "material", Key: "Aqua"}, Property: "water", Value: 101, Unit: "%", By: "Ida"},
		"another unit":     {ID: "reading-6", Subject: wire.Subject{Kind: "material", Key: "Aqua"}, Property: "density", Value: 1, Unit: "min", By: "Ida"},
		"nobody":           {ID: "reading-7", Subject: wire.Subject{Kind: "material", Key: "Aqua"}, Property: "water", Value: 99, Unit: "%"},
	} {
		if _, err := c.AddReading(ctx, r); levigate.CodeOf(err) != levigate.Invalid {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Two windows see each other's edits, and edits of other cells do not clash.
func TestTwoWindows(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	c, server, _ := running(t)
	must[*wire.DraftMade](t)(c.CreateFromFile(ctx, "draft-0001", tea))
	heard := [2]chan wire.Event{make(chan wire.Event, 9), make(chan wire.Event, 9)}
	ended := make(chan error, 2)
	for _, h := range heard {
		go func() { ended <- c.Events(ctx, func(e wire.Event) { h <- e }) }()
	}
	time.Sleep(60 * time.Millisecond) // both listen; several pings go by
	must[*wire.Edited](t)(c.Apply(ctx, "draft-0001", set("command-1", "line-1", "percent", "60.00", "61"), client.Ask{}))
	must[*wire.Edited](t)(c.Apply(ctx, "draft-0001", set("command-2", "line-2", "percent", "10.00", "11"), client.Ask{})) // made on the same revision
	must[*wire.Edited](t)(c.Apply(ctx, "draft-0001", set("command-2", "line-2", "percent", "10.00", "11"), client.Ask{})) // sent again
	must[*wire.Edited](t)(c.Undo(ctx, "draft-0001", "command-3"))
	for i, h := range heard {
		for n, want := range []string{"command-1", "command-2", "command-3"} {
			select {
			case e := <-h:
				if e.ID != "draft-0001" || e.Command != want || e.Revision != int64(n+1) {
					t.Errorf("window %d heard %+v, want %s", i, e, want)
				}
			case <-time.After(2 * time.Second):
				t.Fatalf("window %d did not hear of %s", i, want)
			}
		}
	}
	server.Close()
	for range heard {
		select {
		case err := <-ended:
			if !errors.Is(err, io.EOF) {
				t.Errorf("ended with %v", err)
			}
		case <-time.After(2 * time.Second):
			t.Fatal("a stream does not end with the program")
		}
	}
}

// Whatever is sent and refused, nothing of a formula stands in the log.
func TestNothingOfAFormulaIsLogged(t *testing.T) {
	ctx := context.Background()
	c, _, logged := running(t)
	const secret = "Moonflower-secret"
	file := strings.Replace(tea, "Tea polish", secret, 1)
	must[*wire.DraftMade](t)(c.CreateFromFile(ctx, "draft-0001", file))
	c.CreateFromFile(ctx, "draft-0002", strings.Replace(file, "code:", secret+":", 1))
	c.CreateFromFile(ctx, "x", file)
	c.Apply(ctx, "draft-0001", set("command-1", "line-1", "material", secret, secret), client.Ask{})
	c.Apply(ctx, "draft-0001", set("command-2", "line-9", "material", "", secret), client.Ask{})
	c.Apply(ctx, "draft-0001", set("command-3", "line-1", secret, "", ""), client.Ask{})
	c.Explain(ctx, secret)
	c.Materials(ctx, secret, 5)
	c.Drafts(ctx, secret, 5)
	c.Readings(ctx, "material", secret)
	if strings.Contains(logged.String(), "Moonflower") {
		t.Errorf("logged: %s", logged)
	}
}

func TestAddress(t *testing.T) {
	for _, bad := range []string{"", "http://127.0.0.1:1/", "127.0.0.1:1/?token=x", "://", "/?token=x"} {
		if _, err := client.At(bad); levigate.CodeOf(err) != levigate.Invalid {
			t.Errorf("%q was taken", bad)
		}
	}
	c, _, _ := running(t)
	if _, err := c.Drafts(context.Background(), "", 0); levigate.CodeOf(err) != levigate.Invalid {
		t.Errorf("a bad question: %v", err)
	}
}
