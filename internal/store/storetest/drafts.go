package storetest

import (
	"slices"
	"time"

	"levigate"
)

func create(b *bench) {
	d := &levigate.Draft{ID: "d", Revision: 7, Document: polish()}
	before := time.Now().Add(-time.Second)
	b.must(b.CreateDraft(b.ctx, d))
	if d.Revision != 0 || d.Created.Before(before) || !d.Changed.Equal(d.Created) {
		b.Errorf("created as %+v", d)
	}
	got := b.read("d")
	b.same(got.Document, polish())
	if got.ID != "d" || got.Revision != 0 || !got.Created.Equal(d.Created) || !got.Changed.Equal(d.Changed) {
		b.Errorf("kept as %+v, created as %+v", got, d)
	}
	b.reopen()
	b.same(b.read("d").Document, polish())
	other := polish()
	other.Head["name"] = "Another"
	b.code(b.CreateDraft(b.ctx, &levigate.Draft{ID: "d", Document: other}), levigate.Conflict)
	b.same(b.read("d").Document, polish())
	for _, id := range []string{"", "a b", "é", string(make([]byte, 65))} {
		b.code(b.CreateDraft(b.ctx, &levigate.Draft{ID: id}), levigate.Invalid)
	}
	b.code(b.CreateDraft(b.ctx, &levigate.Draft{ID: "e", Document: levigate.Document{Head: map[string]string{"colour": "red"}}}), levigate.Invalid)
	b.must(b.CreateDraft(b.ctx, &levigate.Draft{ID: "empty"}))
	if empty := b.read("empty").Document; empty.Head == nil || empty.Lines == nil || empty.Making == nil {
		b.Errorf("an empty formula holds nulls: %+v", empty)
	}
	_, err := b.Draft(b.ctx, "nobody")
	b.code(err, levigate.NotFound)
}

func list(b *bench) {
	at := time.Date(2020, 2, 29, 8, 0, 0, 0, time.UTC)
	for i, head := range []map[string]string{
		{"code": "HP-01", "name": "Crème au Beurre"}, {"code": "hp-02", "name": "ÖL-Peeling"}, {"code": "SC_03", "name": "100% Salt scrub"},
		{"code": "X", "name": "Straße! Balm", "product": "lip"}, {"name": "Salt, fine"},
	} {
		t := at.Add(time.Duration(i) * time.Hour)
		b.must(b.CreateDraft(b.ctx, &levigate.Draft{ID: string(rune('a' + i)), Document: levigate.Document{Head: head}, Created: t, Changed: t}))
	}
	for _, c := range []struct {
		text string
		most int
		want string
	}{
		{"", 50, "edcba"}, {"", 2, "ed"}, {"", 0, "edcba"}, {"hp", 50, "ba"}, {"HP-01", 50, "a"}, {"creme", 50, "a"}, {"CRÈME  AU", 50, "a"}, {"beurre", 50, "a"},
		{"oel", 50, ""}, {"öl", 50, "b"}, {"OL", 50, "b"}, {"%", 50, "c"}, {"_", 50, "c"}, {"!", 50, "d"}, {"strasse", 50, "d"}, {"salt", 50, "ec"}, {"lip", 50, ""},
		{"'; --", 50, ""},
	} {
		found, err := b.ListDrafts(b.ctx, c.text, c.most)
		b.must(err)
		got := ""
		for _, d := range found {
			got += d.ID
		}
		if got != c.want {
			b.Errorf("listing %d of %q gives %q, want %q", c.most, c.text, got, c.want)
		}
	}
	// An edit of the name moves the draft to the top and is found by.
	b.edit("a", name("Crème au Beurre", "Été"))
	found, err := b.ListDrafts(b.ctx, "ete", 50)
	b.must(err)
	if len(found) != 1 || found[0].Name != "Été" || found[0].Code != "HP-01" || found[0].Revision != 1 || !found[0].Changed.After(at) {
		b.Errorf("found %+v", found)
	}
	all, err := b.ListDrafts(b.ctx, "", 50)
	b.must(err)
	if len(all) != 5 || all[0].ID != "a" {
		b.Errorf("the last changed is not the first: %+v", all)
	}
	if d := slices.IndexFunc(all, func(d levigate.DraftInfo) bool { return d.ID == "d" }); all[d].Product != "lip" {
		b.Errorf("the product is %q", all[d].Product)
	}
}

func deleted(b *bench) {
	b.draft("d")
	b.draft("other")
	b.edit("d", set("a", "26", "25"))
	b.must(b.Freeze(b.ctx, &levigate.Version{ID: "v", Draft: "d", Revision: 1, Reason: "first trial", Document: b.read("d").Document}))
	b.must(b.DeleteDraft(b.ctx, "d"))
	_, err := b.Draft(b.ctx, "d")
	b.code(err, levigate.NotFound)
	_, err = b.CommandsAfter(b.ctx, "d", 0)
	b.code(err, levigate.NotFound)
	_, err = b.Apply(b.ctx, &levigate.Command{ID: "late", Draft: "d", Changes: []levigate.Change{set("a", "25", "24")}})
	b.code(err, levigate.NotFound)
	_, err = b.Undo(b.ctx, "d", "late-undo", "")
	b.code(err, levigate.NotFound)
	b.code(b.DeleteDraft(b.ctx, "d"), levigate.NotFound)
	all, err := b.ListDrafts(b.ctx, "", 50)
	b.must(err)
	if len(all) != 1 || all[0].ID != "other" {
		b.Errorf("left are %+v", all)
	}
	if _, err := b.Version(b.ctx, "v"); err != nil {
		b.Errorf("the version went with its draft: %v", err)
	}
}
