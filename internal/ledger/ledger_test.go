package ledger

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"levigate"
)

func chain(n int) ([]levigate.Record, Head) {
	var out []levigate.Record
	var head Head
	for i := range n {
		r := levigate.Record{
			ID: fmt.Sprintf("r%d", i+1), Kind: "reading", Subject: levigate.Subject{Kind: "lot", Key: "GL-0" + strconv.Itoa(i%3)},
			Body: fmt.Appendf(nil, `{"property":"water","value":%d}`, i), By: "Mara", At: time.Date(2026, 11, 25, 8, 0, i, 999, time.UTC),
		}
		head = Seal(head, &r)
		out = append(out, r)
	}
	return out, head
}

// faults are the records named and what is said of each, in two or three words.
func faults(records []levigate.Record, head Head) []string {
	slices.SortStableFunc(records, func(a, b levigate.Record) int { return int(a.Seq - b.Seq) })
	var c Checker
	for i := range records {
		c.Add(&records[i])
	}
	var out []string
	for _, f := range c.Faults(head) {
		out = append(out, strings.TrimSpace(f.Record+" "+f.Text))
	}
	return out
}

func TestFaultsAreNamed(t *testing.T) {
	renumber := func(r []levigate.Record) []levigate.Record {
		for i := range r {
			r[i].Seq = int64(i + 1)
		}
		return r
	}
	forged := func(place int64, prev string) levigate.Record {
		x := levigate.Record{ID: "x", Kind: "reading", Body: []byte("{}"), At: time.Unix(0, 0)}
		Seal(Head{place - 1, prev}, &x)
		return x
	}
	for name, c := range map[string]struct {
		do   func(r []levigate.Record, h *Head) []levigate.Record
		want []string // how each fault begins
	}{
		"as written":  {func(r []levigate.Record, _ *Head) []levigate.Record { return r }, nil},
		"body edited": {func(r []levigate.Record, _ *Head) []levigate.Record { r[2].Body = []byte("{}"); return r }, []string{"r3 was edited:"}},
		"who edited":  {func(r []levigate.Record, _ *Head) []levigate.Record { r[0].By = "Ines"; return r }, []string{"r1 was edited:"}},
		"time edited": {func(r []levigate.Record, _ *Head) []levigate.Record {
			r[4].At = r[4].At.Add(time.Microsecond)
			return r
		}, []string{"r5 was edited:"}},
		"two edited":               {func(r []levigate.Record, _ *Head) []levigate.Record { r[1].Why, r[2].Why = "x", "y"; return r }, []string{"r2 was edited:", "r3 was edited:"}},
		"prev edited":              {func(r []levigate.Record, _ *Head) []levigate.Record { r[2].Prev = "abc"; return r }, []string{"r3 was edited:"}},
		"prev made an older one":   {func(r []levigate.Record, _ *Head) []levigate.Record { r[3].Prev = r[1].Hash; return r }, []string{"r4 was edited:"}},
		"edited and hashed anew":   {func(r []levigate.Record, _ *Head) []levigate.Record { r[2].By = "I"; r[2].Hash = Hash(&r[2]); return r }, []string{"r3 was edited and hashed anew"}},
		"last edited, hashed anew": {func(r []levigate.Record, _ *Head) []levigate.Record { r[5].By = "I"; r[5].Hash = Hash(&r[5]); return r }, []string{"r6 was edited and hashed anew"}},
		"hash edited":              {func(r []levigate.Record, _ *Head) []levigate.Record { r[2].Hash = "00"; return r }, []string{"r3 was edited:"}},
		"one removed":              {func(r []levigate.Record, _ *Head) []levigate.Record { return slices.Delete(r, 2, 3) }, []string{"the record at place 3 was removed"}},
		"the first removed":        {func(r []levigate.Record, _ *Head) []levigate.Record { return r[1:] }, []string{"the record at place 1 was removed"}},
		"the last removed":         {func(r []levigate.Record, _ *Head) []levigate.Record { return r[:5] }, []string{"the record at place 6 was removed"}},
		"two removed":              {func(r []levigate.Record, _ *Head) []levigate.Record { return slices.Delete(r, 1, 3) }, []string{"the records at places 2 to 3 were removed"}},
		"all removed":              {func([]levigate.Record, *Head) []levigate.Record { return nil }, []string{"the records at places 1 to 6 were removed"}},
		"removed and renumbered":   {func(r []levigate.Record, _ *Head) []levigate.Record { return renumber(slices.Delete(r, 3, 4)) }, []string{"r5 was moved:", "the record at place 4 was removed", "r6 was moved:"}},
		"removed beside edited":    {func(r []levigate.Record, _ *Head) []levigate.Record { r[3].By = "I"; return slices.Delete(r, 2, 3) }, []string{"the record at place 3 was removed", "r4 was edited:"}},
		"two exchange places":      {func(r []levigate.Record, _ *Head) []levigate.Record { r[1].Seq, r[4].Seq = 5, 2; return r }, []string{"r5 was moved:", "r2 was moved:"}},
		"two exchange what is said": {func(r []levigate.Record, _ *Head) []levigate.Record {
			r[1].Body, r[4].Body = r[4].Body, r[1].Body
			return r
		}, []string{"r2 was edited:", "r5 was edited:"}},
		"put in, badly hashed": {func(r []levigate.Record, _ *Head) []levigate.Record {
			return renumber(slices.Insert(r, 3, levigate.Record{ID: "x", Hash: "11", Prev: r[2].Hash}))
		}, []string{"x was put in:", "r4 was moved:", "r5 was moved:", "r6 was moved:"}},
		"put in, well hashed": {func(r []levigate.Record, _ *Head) []levigate.Record {
			return renumber(slices.Insert(r, 3, forged(4, r[2].Hash)))
		}, []string{"x was put in:", "r4 was moved:", "r5 was moved:", "r6 was moved:"}},
		"put behind the last": {func(r []levigate.Record, _ *Head) []levigate.Record { return append(r, forged(7, r[5].Hash)) }, []string{"x was put in:"}},
		"exchanged":           {func(r []levigate.Record, _ *Head) []levigate.Record { r[2] = forged(3, r[1].Hash); return r }, []string{"x was edited and hashed anew, or exchanged"}},
		"a copy put in": {func(r []levigate.Record, _ *Head) []levigate.Record {
			x := r[2]
			x.ID, x.Seq = "x", 7
			return append(r, x)
		}, []string{"x was put in:"}},
		"the note removed":   {func(r []levigate.Record, h *Head) []levigate.Record { *h = Head{}; return r }, []string{"the note of the last record"}},
		"the note's place":   {func(r []levigate.Record, h *Head) []levigate.Record { h.Seq = 9; return r }, []string{"the note of the last record was edited"}},
		"the note's hash":    {func(r []levigate.Record, h *Head) []levigate.Record { h.Hash = "22"; return r }, []string{"r6 was edited and hashed anew, or exchanged"}},
		"the note far ahead": {func(r []levigate.Record, h *Head) []levigate.Record { *h = Head{1 << 62, "22"}; return r }, []string{"the records at places 7 to"}},
		"far away":           {func(r []levigate.Record, _ *Head) []levigate.Record { r[2].Seq = 5000; return r }, []string{"r3 was edited:"}},
		"negative places":    {func(r []levigate.Record, _ *Head) []levigate.Record { r[0].Seq = -4; return r }, []string{"r1 was moved:"}},
	} {
		records, head := chain(6)
		got := faults(c.do(records, &head), head)
		ok := len(got) == len(c.want)
		for i := range got {
			ok = ok && strings.HasPrefix(got[i], c.want[i])
		}
		if !ok {
			t.Errorf("%s:\n got %q\nwant %q", name, got, c.want)
		}
	}
}

// Whatever single thing is done to a chain of any length is seen, and the
// record it was done to is named.
func TestAnyOneChangeIsNamed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, head := chain(rapid.IntRange(1, 40).Draw(t, "length"))
		i := rapid.IntRange(0, len(records)-1).Draw(t, "which")
		id, place := records[i].ID, records[i].Seq
		r := &records[i]
		want := id + " was edited:"
		switch rapid.SampledFrom([]string{"id", "kind", "subject", "key", "body", "by", "why", "at", "corrects", "prev", "remove", "exchange"}).Draw(t, "what") {
		case "id":
			r.ID += "x"
			want = r.ID + " was edited:"
		case "kind":
			r.Kind = ""
		case "subject":
			r.Subject.Kind += " "
		case "key":
			r.Subject.Kind, r.Subject.Key = r.Subject.Kind+r.Subject.Key[:1], r.Subject.Key[1:]
		case "body":
			r.Body = append(bytes.Clone(r.Body), ' ')
		case "by":
			r.By = strings.ToUpper(r.By)
		case "why":
			r.Why = "an afterthought"
		case "at":
			r.At = r.At.Add(-time.Hour)
		case "corrects":
			r.Corrects = "r1"
		case "prev":
			r.Prev += "0"
		case "remove":
			records = slices.Delete(records, i, i+1)
			want = fmt.Sprintf("the record at place %d was removed", place)
		case "exchange":
			r.By = "someone else"
			r.Hash = Hash(r)
			want = id + " was edited and hashed anew"
		}
		got := faults(records, head)
		if len(got) != 1 || !strings.HasPrefix(got[0], want) {
			t.Fatalf("got %q, want one: %q", got, want)
		}
	})
}

// A head noted elsewhere shows what the file alone can't: a chain made anew.
func TestNotedHead(t *testing.T) {
	records, noted := chain(4)
	var c Checker
	for i := range records {
		c.Add(&records[i])
	}
	if !c.Holds(noted.Hash) || c.Head() != noted || len(c.Faults(noted)) > 0 {
		t.Error("the chain as written does not hold its own head")
	}
	var anew Checker
	head := Head{}
	for i := range records {
		records[i].By = "someone else"
		head = Seal(head, &records[i])
		anew.Add(&records[i])
	}
	if got := anew.Faults(head); len(got) != 0 {
		t.Errorf("a chain made anew shows %v; then the doc may promise more", got)
	}
	if anew.Holds(noted.Hash) {
		t.Error("a chain made anew holds the hash that was noted")
	}
}

// fields reads canonical bytes back, so that they can mean one record only.
func fields(b []byte) ([]string, error) {
	rest, ok := bytes.CutPrefix(b, []byte(edition))
	if !ok {
		return nil, fmt.Errorf("no edition")
	}
	var out []string
	for len(rest) > 0 {
		line, after, _ := bytes.Cut(rest, []byte("\n"))
		_, digits, _ := strings.Cut(string(line), " ")
		n, err := strconv.Atoi(digits)
		if err != nil || n+1 > len(after) || after[n] != '\n' {
			return nil, fmt.Errorf("%q", line)
		}
		out, rest = append(out, string(after[:n])), after[n+1:]
	}
	return out, nil
}

func FuzzBytes(f *testing.F) {
	f.Add("r1", "reading", "lot", "GL-01", "Mara", "", "", []byte(`{"value":1}`), int64(1732521600000000), int64(3))
	f.Add("", "", "", "", "by 3\nwhy", "seq 1\n1\n", "\n", []byte("body 0\n\n"), int64(0), int64(-1))
	f.Add("\xff", "\x00", "é", "", "", "", "", []byte{0, 10, 255}, int64(-62135596800000000), int64(1<<62))
	f.Fuzz(func(t *testing.T, id, kind, subject, key, by, why, corrects string, body []byte, micro, seq int64) {
		r := levigate.Record{ID: id, Kind: kind, Subject: levigate.Subject{Kind: subject, Key: key}, By: by, Why: why,
			Corrects: corrects, Body: body, At: time.UnixMicro(micro), Seq: seq, Prev: "00"}
		got, err := fields(Bytes(&r))
		want := []string{id, kind, subject, key, by, why, r.At.UTC().Format(Time), corrects, string(body), "00", strconv.FormatInt(seq, 10)}
		if err != nil || !slices.Equal(got, want) {
			t.Fatalf("%v: %q, want %q", err, got, want)
		}
		var c Checker
		r.Seq, r.Prev = 0, ""
		head := Seal(Head{}, &r)
		c.Add(&r)
		if faults := c.Faults(head); len(faults) > 0 {
			t.Fatal(faults)
		}
	})
}

// The canonical form is fixed for good: records made today must verify for as
// long as they are kept. This hash was made with sha256sum from the bytes
// written out by hand.
func TestCanonicalForm(t *testing.T) {
	r := levigate.Record{ID: "r1", Kind: "reading", Subject: levigate.Subject{Kind: "lot", Key: "GL-01"}, Body: []byte(`{"é":1}`),
		By: "Mara", At: time.Date(2026, 11, 25, 9, 0, 0, 1500, time.FixedZone("CET", 3600)), Corrects: "r0"}
	Seal(Head{}, &r)
	want := "levigate/record/1\nid 2\nr1\nkind 7\nreading\nsubject.kind 3\nlot\nsubject.key 5\nGL-01\nby 4\nMara\nwhy 0\n\n" +
		"at 27\n2026-11-25T08:00:00.000001Z\ncorrects 2\nr0\nbody 8\n{\"é\":1}\nprev 0\n\nseq 1\n1\n"
	if got := string(Bytes(&r)); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if r.Hash != canonicalHash {
		t.Errorf("hash %s, want %s", r.Hash, canonicalHash)
	}
}

const canonicalHash = "d2d77b6599ddef2a41776e1b7444e5bb34267c74567f3c19eab02d3744e8d3d3"
