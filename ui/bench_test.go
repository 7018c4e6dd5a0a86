package ui

import (
	"io/fs"
	"net/http"
	"net/http/httptest"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

func ask(h http.Handler, method, target string, header ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, target, nil)
	for i := 0; i+1 < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

var small = fstest.MapFS{
	"index.html":          {Data: []byte("<div id=root></div>")},
	"assets/index-abc.js": {Data: []byte("1")},
	"assets/v-abc.woff2":  {Data: []byte("font")},
	"assets/odd.exe":      {Data: []byte("no kind")},
	"licences.txt":        {Data: []byte("OFL")},
	".stamp":              {Data: []byte("hash")},
}

func TestBenchServes(t *testing.T) {
	h := benchOf(small)
	for _, c := range []struct {
		target       string
		status       int
		kind, caches string
	}{
		{"/", 200, "text/html", "no-cache"},
		{"/index.html", 200, "text/html", "no-cache"},
		{"/drafts/0198-abc", 200, "text/html", "no-cache"},
		{"/assets/index-abc.js", 200, "text/javascript", "immutable"},
		{"/assets/v-abc.woff2", 200, "font/woff2", "immutable"},
		{"/licences.txt", 200, "text/plain", "no-cache"},
		{"/assets/index-old.js", 404, "text/plain", ""},
		{"/assets/none", 404, "text/plain", ""},
		{"/assets", 200, "text/html", "no-cache"},
		{"/assets/odd.exe", 404, "text/plain", ""},
		{"/.stamp", 404, "text/plain", ""},
		{"/../ui.go", 404, "text/plain", ""},
		{"/assets/..%2f..%2fui.go", 404, "text/plain", ""},
	} {
		w := ask(h, "GET", c.target)
		if w.Code != c.status || !strings.HasPrefix(w.Header().Get("Content-Type"), c.kind) {
			t.Errorf("%s: %d %s, want %d %s", c.target, w.Code, w.Header().Get("Content-Type"), c.status, c.kind)
		}
		if got := w.Header().Get("Cache-Control"); !strings.Contains(got, c.caches) || c.caches == "" && got != "" {
			t.Errorf("%s: cached %q, want %q", c.target, got, c.caches)
		}
	}
}

func TestBenchIsNotSentTwice(t *testing.T) {
	h := benchOf(small)
	first := ask(h, "GET", "/")
	if w := ask(h, "GET", "/", "If-None-Match", first.Header().Get("ETag")); w.Code != http.StatusNotModified || w.Body.Len() > 0 {
		t.Errorf("the same page again: %d, %d bytes", w.Code, w.Body.Len())
	}
	if w := ask(h, "GET", "/assets/index-abc.js", "If-None-Match", first.Header().Get("ETag")); w.Code != 200 {
		t.Errorf("another file by the page's tag: %d", w.Code)
	}
}

func TestBenchIsOnlyRead(t *testing.T) {
	if w := ask(benchOf(small), "POST", "/"); w.Code != http.StatusMethodNotAllowed {
		t.Errorf("POST: %d", w.Code)
	}
	if w := ask(benchOf(small), "HEAD", "/"); w.Code != 200 || w.Body.Len() > 0 {
		t.Errorf("HEAD: %d, %d bytes", w.Code, w.Body.Len())
	}
}

// A clone without Node still gives a program; its page says what to do.
func TestBenchWithoutABuildSaysHow(t *testing.T) {
	empty := fstest.MapFS{}
	if built(empty) || !built(small) {
		t.Error("what is built and what is not")
	}
	w := ask(benchOf(empty), "GET", "/drafts/x")
	if w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), "go run ./tools/dev run") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

var (
	inPage = regexp.MustCompile(`(?s)<script[^>]*>[^<]+</script>|<style| style=|\son[a-z]+=|javascript:`)
	loads  = regexp.MustCompile(`(?:src|href)="([^"]*)"`)
	inCSS  = regexp.MustCompile(`url\(["']?([^)"']*)|@import`)
)

// outside lists what a page or a style sheet does that the policy forbids:
// something of its own within the page, or a load from elsewhere.
func outside(name, text string) []string {
	var bad []string
	local := func(address string) bool {
		return strings.HasPrefix(address, "/") && !strings.HasPrefix(address, "//") || strings.HasPrefix(address, "./")
	}
	switch path.Ext(name) {
	case ".html":
		bad = inPage.FindAllString(text, -1)
		for _, m := range loads.FindAllStringSubmatch(text, -1) {
			if !local(m[1]) {
				bad = append(bad, m[0])
			}
		}
	case ".css":
		for _, m := range inCSS.FindAllStringSubmatch(text, -1) {
			if !local(m[1]) {
				bad = append(bad, m[0])
			}
		}
	}
	return bad
}

func TestBuiltBenchKeepsThePolicy(t *testing.T) {
	if !BenchBuilt() {
		t.Skip("the bench is not built here; go run ./tools/dev test builds it first")
	}
	err := fs.WalkDir(app(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(name, ".") {
			return err
		}
		if _, known := kinds[path.Ext(name)]; !known {
			t.Errorf("%s is of a kind that is never sent", name)
		}
		text, err := fs.ReadFile(app(), name)
		for _, bad := range outside(name, string(text)) {
			t.Errorf("%s holds %.80q", name, bad)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestPolicyCheckCatches(t *testing.T) {
	for name, text := range map[string]string{
		"a.html": `<script>go()</script>`,
		"b.html": `<link href="https://elsewhere/x.css">`,
		"c.html": `<p style="color:red">`,
		"d.html": `<body onload="go()">`,
		"e.html": `<script src="//elsewhere/x.js"></script>`,
		"a.css":  `@import "x.css"`,
		"b.css":  `a{background:url(https://elsewhere/x.png)}`,
		"c.css":  `@font-face{src:url("data:font/woff2;base64,AA")}`,
	} {
		if len(outside(name, text)) == 0 {
			t.Errorf("%s passes: %s", name, text)
		}
	}
	good := `<script type="module" crossorigin src="/assets/index-abc.js"></script><noscript>No.</noscript>`
	if bad := outside("good.html", good); bad != nil {
		t.Errorf("a good page is refused for %q", bad)
	}
}
