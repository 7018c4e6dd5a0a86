package storetest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"time"

	"levigate"
)

func versions(b *bench) {
	b.draft("d")
	b.draft("e")
	b.edit("d", set("a", "26", "25"))
	at := time.Date(2026, 11, 25, 9, 30, 0, 123456789, time.FixedZone("CET", 3600))
	first := &levigate.Version{ID: "v1", Draft: "d", Number: 9, Revision: 1, Reason: "first trial", By: "Mara", At: at, Document: b.read("d").Document,
		Materials: map[string]json.RawMessage{"GL@1": json.RawMessage(`{"name":"Glycerin <86>"}`)}, Check: json.RawMessage(`{"schema":"x", "figures":[ 1.50 ]}`),
		Program: "levigate 0", Refdata: "abc"}
	b.must(b.Freeze(b.ctx, first))
	if first.Number != 1 || !first.At.Equal(at.Truncate(time.Microsecond)) {
		b.Errorf("frozen as %+v", first)
	}
	second := &levigate.Version{ID: "v2", Draft: "d", Revision: 0, Document: polish()}
	b.must(b.Freeze(b.ctx, second))
	other := &levigate.Version{ID: "w1", Draft: "e", Document: polish()}
	b.must(b.Freeze(b.ctx, other))
	if second.Number != 2 || other.Number != 1 || second.At.IsZero() {
		b.Errorf("numbers %d and %d", second.Number, other.Number)
	}
	b.edit("d", set("a", "25", "24"))
	b.reopen()
	got, err := b.Version(b.ctx, "v1")
	b.must(err)
	if !got.At.Equal(first.At) {
		b.Errorf("time %v, was %v", got.At, first.At)
	}
	got.At = first.At
	if !reflect.DeepEqual(got, first) {
		b.Errorf("kept as\n%+v\nfrozen as\n%+v", got, first)
	}
	all, err := b.VersionsOf(b.ctx, "d")
	b.must(err)
	if len(all) != 2 || all[0].ID != "v1" || all[1].ID != "v2" {
		b.Errorf("versions %+v", all)
	}
	b.code(b.Freeze(b.ctx, &levigate.Version{ID: "v1", Draft: "d", Reason: "again"}), levigate.Conflict)
	b.code(b.Freeze(b.ctx, &levigate.Version{ID: "v3", Draft: "nobody"}), levigate.NotFound)
	b.code(b.Freeze(b.ctx, &levigate.Version{ID: "v3", Draft: "d", Revision: 99}), levigate.Invalid)
	b.code(b.Freeze(b.ctx, &levigate.Version{ID: "v3", Draft: "d", Check: json.RawMessage("{")}), levigate.Invalid)
	_, err = b.Version(b.ctx, "v3")
	b.code(err, levigate.NotFound)
	none, err := b.VersionsOf(b.ctx, "nobody")
	if b.must(err); none == nil || len(none) != 0 {
		b.Errorf("versions of nobody: %+v", none)
	}
	together(func(who int) {
		if err := b.Freeze(b.ctx, &levigate.Version{ID: fmt.Sprint("t", who), Draft: "e"}); err != nil {
			b.Error(err)
		}
	})
	all, err = b.VersionsOf(b.ctx, "e")
	b.must(err)
	for i, v := range all {
		if v.Number != i+1 {
			b.Errorf("version %d has the number %d", i+1, v.Number)
		}
	}
}

func lot(key string) levigate.Subject { return levigate.Subject{Kind: "lot", Key: key} }

func records(b *bench) {
	at := time.Date(2026, 11, 25, 9, 30, 0, 987654321, time.FixedZone("CET", 3600))
	body := []byte("{\"value\": 12.50,\n \"raw\": \"\x00\xff\"}")
	one := &levigate.Record{ID: "r1", Kind: "reading", Subject: lot("GL-01"), Body: body, By: "Mara", Why: "on arrival", At: at, Seq: 44, Prev: "x", Hash: "y"}
	b.must(b.AddRecord(b.ctx, one))
	two := &levigate.Record{ID: "r2", Kind: "reading", Subject: lot("GL-02")}
	b.must(b.AddRecord(b.ctx, two))
	b.reopen()
	three := &levigate.Record{ID: "r3", Kind: "reading", Subject: lot("GL-01"), Body: []byte("{}"), Corrects: "r1"}
	b.must(b.AddRecord(b.ctx, three))
	if one.Seq != 1 || one.Prev != "" || two.Seq != 2 || two.Prev != one.Hash || three.Seq != 3 || three.Prev != two.Hash || len(three.Hash) != 64 || two.At.IsZero() {
		b.Errorf("chained as\n%+v\n%+v\n%+v", one, two, three)
	}
	got, err := b.Record(b.ctx, "r1")
	b.must(err)
	if !got.At.Equal(one.At) || !bytes.Equal(got.Body, body) {
		b.Errorf("kept as %+v", got)
	}
	got.At = one.At
	if !reflect.DeepEqual(got, one) {
		b.Errorf("kept as\n%+v\nmade as\n%+v", got, one)
	}
	of, err := b.RecordsOf(b.ctx, lot("GL-01"))
	b.must(err)
	if len(of) != 2 || of[0].ID != "r1" || of[1].ID != "r3" || of[1].Corrects != "r1" {
		b.Errorf("records %+v", of)
	}
	none, err := b.RecordsOf(b.ctx, levigate.Subject{Kind: "batch", Key: "GL-01"})
	if b.must(err); none == nil || len(none) != 0 {
		b.Errorf("records of another: %+v", none)
	}
	b.code(b.AddRecord(b.ctx, &levigate.Record{ID: "r1", Kind: "reading"}), levigate.Conflict)
	b.code(b.AddRecord(b.ctx, &levigate.Record{ID: "r9", Kind: "reading", Corrects: "r8"}), levigate.Invalid)
	b.code(b.AddRecord(b.ctx, &levigate.Record{ID: "r9"}), levigate.Invalid)
	b.code(b.AddRecord(b.ctx, &levigate.Record{ID: "r9", Kind: "reading", Why: "\xff"}), levigate.Invalid)
	_, err = b.Record(b.ctx, "r9")
	b.code(err, levigate.NotFound)
	b.whole()
}

func recordsAtOnce(b *bench) {
	together(func(who int) {
		for i := range 5 {
			if err := b.AddRecord(b.ctx, &levigate.Record{ID: fmt.Sprintf("%d-%d", who, i), Kind: "reading", Subject: lot("GL-01")}); err != nil {
				b.Error(err)
			}
		}
	})
	all, err := b.RecordsOf(b.ctx, lot("GL-01"))
	b.must(err)
	prev := ""
	for i, r := range all {
		if r.Seq != int64(i+1) || r.Prev != prev {
			b.Fatalf("record %d is %+v", i+1, r)
		}
		prev = r.Hash
	}
	if len(all) != 5*editors {
		b.Errorf("%d records of %d", len(all), 5*editors)
	}
	b.whole()
}

func (b *bench) whole() {
	b.Helper()
	faults, err := b.Verify(b.ctx)
	if b.must(err); len(faults) > 0 {
		b.Errorf("the chain as written has faults: %+v", faults)
	}
}
