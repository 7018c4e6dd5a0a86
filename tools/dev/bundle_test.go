package main

import (
	"strings"
	"testing"
)

// builtBench writes a build as Vite leaves it: a page, an entry that imports a
// part at once and another later, a style sheet with faces.
func builtBench(t *testing.T) string {
	dir := t.TempDir()
	write(t, dir, "index.html", `<script type="module" crossorigin src="/assets/index-a.js"></script><link rel="stylesheet" crossorigin href="/assets/index-b.css"><link rel="icon" href="/icon.svg">`)
	write(t, dir, "assets/index-a.js", `import{x as y}from"./shared-c.js";import("./later-d.js");y()`)
	write(t, dir, "assets/shared-c.js", `export const x=1`)
	write(t, dir, "assets/later-d.js", strings.Repeat("late", 1000))
	write(t, dir, "assets/index-b.css", `@font-face{font-family:"S";src:url(/assets/s-latin.woff2)format("woff2");unicode-range:U+??,U+131}`+
		`@font-face{font-family:"S";src:url(/assets/s-greek.woff2)format("woff2");unicode-range:U+370-377}`+
		`@font-face{font-family:"T";src:url("/assets/t-all.woff2")}`)
	write(t, dir, "assets/s-latin.woff2", strings.Repeat("l", 1000))
	write(t, dir, "assets/s-greek.woff2", strings.Repeat("g", 5000))
	write(t, dir, "assets/t-all.woff2", strings.Repeat("t", 500))
	return dir
}

func TestFirstLoad(t *testing.T) {
	l, err := firstLoad(builtBench(t))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, p := range l {
		names = append(names, p.name)
	}
	want := "index.html assets/index-a.js assets/index-b.css assets/shared-c.js assets/s-latin.woff2 assets/t-all.woff2"
	if got := strings.Join(names, " "); got != want {
		t.Errorf("counted %s\nwant    %s", got, want)
	}
	// Fonts count as they are, the rest as gzip would send it.
	if n := l.total(); n < 1500 || n > 2500 {
		t.Errorf("%d bytes in all", n)
	}
	if l.within(l.total()) != nil || l.within(l.total()-1) == nil {
		t.Error("the limit is not where it says")
	}
}

func TestFirstLoadNeedsSomethingToMeasure(t *testing.T) {
	for name, page := range map[string]string{
		"no script":      `<p>nothing</p>`,
		"a missing file": `<script src="/assets/gone.js"></script>`,
	} {
		dir := t.TempDir()
		write(t, dir, "index.html", page)
		if l, err := firstLoad(dir); err == nil {
			t.Errorf("%s: measured %d bytes", name, l.total())
		}
	}
	if _, err := firstLoad(t.TempDir()); err == nil {
		t.Error("no build at all was measured")
	}
}
