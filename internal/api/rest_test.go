package api_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"levigate"
	"levigate/internal/api"
	"levigate/internal/program"
	"levigate/internal/store/sqlite/sqlitetest"
	"levigate/wire"
)

const address, token = "127.0.0.1:7420", "a-token-of-this-test"

func server(t testing.TB, bench func(api.Bench) api.Bench, to io.Writer) *api.Server {
	p := program.New()
	var b api.Bench = program.NewBench(p, sqlitetest.Open(t))
	if bench != nil {
		b = bench(b)
	}
	return api.New(api.Config{Workshop: p, Bench: b, Address: address, Token: token, Log: log.New(to, "", 0)})
}

func ask(h http.Handler, method, path, body string, change func(*http.Request)) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "http://"+address+path, strings.NewReader(body))
	r.Header.Set("Cookie", "levigate="+token)
	if body != "" {
		r.Header.Set("Content-Type", "application/json")
	}
	if change != nil {
		change(r)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

const document = `{"head":{"code":"S-1","name":"Sheet","product":"bath"},"lines":[{"id":"a","cells":{"material":"Glycerin","percent":"60"}}],"making":[]}`

func TestRefusals(t *testing.T) {
	h := server(t, nil, io.Discard)
	if w := ask(h, "POST", "/api/drafts", `{"id":"draft-0001","document":`+document+`}`, nil); w.Code != 201 {
		t.Fatal(w.Code, w.Body)
	}
	command := func(changes string) string { return `{"id":"command-1","base":0,"changes":[` + changes + `]}` }
	header := func(key, value string) func(*http.Request) {
		return func(r *http.Request) { r.Header.Set(key, value) }
	}
	for _, c := range []struct {
		name, method, path, body string
		change                   func(*http.Request)
		status                   int
		code                     string
	}{
		{"no token", "GET", "/api/drafts", "", func(r *http.Request) { r.Header.Del("Cookie") }, 401, "invalid"},
		{"a wrong token", "GET", "/api/drafts", "", header("Cookie", "levigate=wrong"), 401, "invalid"},
		{"the token in the address", "GET", "/api/drafts?token=" + token, "", func(r *http.Request) { r.Header.Del("Cookie") }, 401, "invalid"},
		{"a foreign host", "GET", "/api/drafts", "", func(r *http.Request) { r.Host = "evil.example:7420" }, 421, "invalid"},
		{"a foreign origin", "POST", "/api/drafts", `{}`, header("Origin", "https://evil.example"), 403, "invalid"},
		{"a foreign origin reads", "GET", "/api/drafts", "", header("Sec-Fetch-Site", "cross-site"), 403, "invalid"},
		{"cross-site", "DELETE", "/api/drafts/draft-0001", "", header("Sec-Fetch-Site", "cross-site"), 403, "invalid"},
		{"another port", "POST", "/api/drafts", `{}`, header("Sec-Fetch-Site", "same-site"), 403, "invalid"},
		{"too large", "POST", "/api/drafts", `{"id":"draft-0002","file":"` + strings.Repeat("x", 1<<20) + `"}`, nil, 400, "invalid"},
		{"far too large", "POST", "/api/assess", strings.Repeat(" ", 3<<20), nil, 400, "invalid"},
		{"no body", "POST", "/api/drafts", "", nil, 400, "invalid"},
		{"no JSON", "POST", "/api/drafts", "{", nil, 400, "invalid"},
		{"a form", "POST", "/api/drafts", "id=draft-0002", header("Content-Type", "application/x-www-form-urlencoded"), 400, "invalid"},
		{"an unknown field", "POST", "/api/drafts", `{"id":"draft-0002","document":` + document + `,"colour":"grey"}`, nil, 400, "invalid"},
		{"an unknown field of the head", "POST", "/api/drafts", `{"id":"draft-0002","document":` + strings.Replace(document, `"code"`, `"colour"`, 1) + `}`, nil, 400, "invalid"},
		{"a row twice", "POST", "/api/drafts", `{"id":"draft-0002","document":{"head":{},"lines":[{"id":"a","cells":{}},{"id":"a","cells":{}}],"making":[]}}`, nil, 400, "invalid"},
		{"a short id", "POST", "/api/drafts", `{"id":"d","document":` + document + `}`, nil, 400, "invalid"},
		{"an id that climbs", "POST", "/api/drafts", `{"id":"../../../etc","document":` + document + `}`, nil, 400, "invalid"},
		{"neither document nor file", "POST", "/api/drafts", `{"id":"draft-0002"}`, nil, 400, "invalid"},
		{"a broken file", "POST", "/api/drafts", `{"id":"draft-0002","file":"levigate: formula/9"}`, nil, 400, "invalid"},
		{"the same draft again", "POST", "/api/drafts", `{"id":"draft-0001","document":` + document + `}`, nil, 409, "conflict"},
		{"an unknown draft", "GET", "/api/drafts/draft-9999", "", nil, 404, "not-found"},
		{"an edit of an unknown draft", "POST", "/api/drafts/draft-9999/commands", command(`{"do":"set","list":"head","field":"name","to":"x"}`), nil, 404, "not-found"},
		{"an unknown version", "GET", "/api/versions/version-9", "", nil, 404, "not-found"},
		{"a formula file", "GET", "/api/drafts/draft-0001/file", "", nil, 200, ""},
		{"an unknown verb", "POST", "/api/drafts/draft-0001/commands", command(`{"do":"burn","list":"head"}`), nil, 400, "invalid"},
		{"an unknown cell", "POST", "/api/drafts/draft-0001/commands", command(`{"do":"set","list":"lines","row":"a","field":"colour"}`), nil, 400, "invalid"},
		{"no changes", "POST", "/api/drafts/draft-0001/commands", command(""), nil, 400, "invalid"},
		{"a clash", "POST", "/api/drafts/draft-0001/commands", command(`{"do":"set","list":"head","field":"name","from":"old","to":"new"}`), nil, 409, "conflict"},
		{"too hot", "POST", "/api/drafts/draft-0001/commands?temperature=99", command(`{"do":"set","list":"head","field":"name","from":"Sheet","to":"x"}`), nil, 400, "invalid"},
		{"no number", "GET", "/api/drafts/draft-0001/check?temperature=NaN", "", nil, 400, "invalid"},
		{"nowhere", "GET", "/api/nowhere", "", nil, 404, "not-found"},
		{"another method", "PUT", "/api/drafts", "", nil, 404, "not-found"},
	} {
		w := ask(h, c.method, c.path, c.body, c.change)
		var r wire.Refusal
		if c.code != "" {
			if err := json.Unmarshal(w.Body.Bytes(), &r); err != nil || r.Code != c.code || r.Message == "" {
				t.Errorf("%s: %v, %.200s", c.name, err, w.Body)
			}
		}
		if w.Code != c.status {
			t.Errorf("%s: %d, want %d: %.300s", c.name, w.Code, c.status, w.Body)
		}
		if w.Header().Get("Cache-Control") != "no-store" {
			t.Errorf("%s: may be kept", c.name)
		}
		if c.name == "a clash" && (len(r.Clashes) != 1 || r.Clashes[0].Now != "Sheet") {
			t.Errorf("%s: %+v", c.name, r)
		}
	}
	// None of it changed anything.
	w := ask(h, "GET", "/api/drafts/draft-0001", "", nil)
	if !strings.Contains(w.Body.String(), `"revision":0`) || !strings.Contains(w.Body.String(), `"name":"Sheet"`) {
		t.Errorf("%.300s", w.Body)
	}
}

// From a page elsewhere a redirect would go on without the cookie.
func TestFirstVisitFromAFile(t *testing.T) {
	h := server(t, nil, io.Discard)
	w := ask(h, "GET", "/?token="+token, "", func(r *http.Request) {
		r.Header.Del("Cookie")
		r.Header.Set("Sec-Fetch-Site", "cross-site")
		r.Header.Set("Sec-Fetch-Mode", "navigate")
	})
	if w.Code != 200 || w.Header().Get("Refresh") != "0; url=/" || !strings.Contains(w.Header().Get("Set-Cookie"), token) || strings.Contains(w.Body.String(), token) {
		t.Errorf("%d %v %s", w.Code, w.Header(), w.Body)
	}
}

// The token comes in the address once and leaves it at once.
func TestFirstVisit(t *testing.T) {
	h := server(t, nil, io.Discard)
	w := ask(h, "GET", "/?token="+token, "", func(r *http.Request) { r.Header.Del("Cookie") })
	cookie := w.Header().Get("Set-Cookie")
	if w.Code != 303 || w.Header().Get("Location") != "/" || w.Header().Get("Referrer-Policy") != "no-referrer" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	for _, want := range []string{"levigate=" + token, "HttpOnly", "SameSite=Strict", "Path=/"} {
		if !strings.Contains(cookie, want) {
			t.Errorf("the cookie %q lacks %s", cookie, want)
		}
	}
	w = ask(h, "GET", "/", "", func(r *http.Request) { r.Header.Set("Cookie", strings.Split(cookie, ";")[0]) })
	if w.Code != 200 || strings.Contains(w.Body.String(), token) {
		t.Errorf("%d; the token stands on the page: %t", w.Code, strings.Contains(w.Body.String(), token))
	}
	w = ask(h, "GET", "/", "", func(r *http.Request) { r.Header.Del("Cookie") })
	if w.Code != 401 || !strings.Contains(w.Body.String(), "open the address that levigate printed") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	if w := ask(api.New(api.Config{Workshop: program.New(), Address: address}), "GET", "/?token=", "", nil); w.Code != 401 {
		t.Errorf("a server without a token let somebody in: %d", w.Code)
	}
}

// faulty is a bench that breaks.
type faulty struct{ api.Bench }

func (faulty) Materials(context.Context, string, int) (wire.MaterialList, error) {
	panic("Moonflower-secret")
}

func (faulty) Drafts(context.Context, string, int) (wire.DraftList, error) {
	return wire.DraftList{}, fmt.Errorf("disk: %w", io.ErrUnexpectedEOF)
}

func TestOurFaultIsOurs(t *testing.T) {
	var logged bytes.Buffer
	h := server(t, func(b api.Bench) api.Bench { return faulty{b} }, &logged)
	for _, path := range []string{"/api/materials?text=Moonflower", "/api/drafts?text=Moonflower"} {
		w := ask(h, "GET", path, "", nil)
		if w.Code != 500 || !strings.Contains(w.Body.String(), `"code":"internal"`) || strings.Contains(w.Body.String(), "disk") {
			t.Errorf("%s: %d %s", path, w.Code, w.Body)
		}
	}
	if s := logged.String(); strings.Contains(s, "Moonflower") || !strings.Contains(s, "disk") || !strings.Contains(s, "/api/materials") {
		t.Errorf("logged: %.400s", s)
	}
}

// A listener that does not read is let go, and nobody waits for it.
func TestSlowListener(t *testing.T) {
	h := server(t, nil, io.Discard)
	if w := ask(h, "POST", "/api/drafts", `{"id":"draft-0001","document":`+document+`}`, nil); w.Code != 201 {
		t.Fatal(w.Code)
	}
	stuck, release := make(chan struct{}), make(chan struct{})
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		r := httptest.NewRequest("GET", "http://"+address+"/api/events", nil)
		r.Header.Set("Cookie", "levigate="+token)
		h.ServeHTTP(&slow{ResponseRecorder: httptest.NewRecorder(), stuck: stuck, release: release}, r)
	}()
	<-stuck
	for i := range 100 {
		c := fmt.Sprintf(`{"id":"command-%d","base":%d,"changes":[{"do":"insert","list":"lines","row":"r%d"}]}`, i, i, i)
		if w := ask(h, "POST", "/api/drafts/draft-0001/commands", c, nil); w.Code != 200 {
			t.Fatal(w.Code, w.Body)
		}
	}
	close(release)
	select {
	case <-ended:
	case <-time.After(5 * time.Second):
		t.Error("a listener far behind is still held")
	}
}

// slow waits in its first event until it is released.
type slow struct {
	*httptest.ResponseRecorder
	stuck, release chan struct{}
	told           bool
}

func (s *slow) Write(b []byte) (int, error) {
	if !s.told {
		s.told = true
		close(s.stuck)
		<-s.release
	}
	return s.ResponseRecorder.Write(b)
}

func (s *slow) SetWriteDeadline(time.Time) error { return nil }
func (s *slow) SetReadDeadline(time.Time) error  { return nil }

// The page in docs/ is what is served, every address is in it, and what may be
// null says so.
func TestSpecification(t *testing.T) {
	h := server(t, nil, io.Discard)
	w := ask(h, "GET", "/api/openapi.json", "", nil)
	kept, err := os.ReadFile("../../docs/openapi.json")
	if err != nil || w.Body.String() != string(kept) {
		t.Errorf("docs/openapi.json is not what is served (%v); run go run ./tools/gendocs", err)
	}
	var spec struct {
		Paths      map[string]map[string]any
		Components struct {
			Schemas map[string]struct {
				Properties map[string]map[string]any
				Required   []string
			}
		}
	}
	if err := json.Unmarshal(w.Body.Bytes(), &spec); err != nil {
		t.Fatal(err)
	}
	for _, path := range strings.Fields("/api/drafts /api/drafts/{id} /api/drafts/{id}/commands /api/drafts/{id}/undo /api/drafts/{id}/redo /api/drafts/{id}/check " +
		"/api/assess /api/drafts/{id}/file /api/materials /api/explain/{id} /api/drafts/{id}/versions /api/versions/{id} /api/readings /api/events") {
		if spec.Paths[path] == nil {
			t.Errorf("%s is not described", path)
		}
	}
	s := spec.Components.Schemas
	if s["Check"].Properties["working"]["anyOf"] == nil || s["Check"].Properties["qs"]["anyOf"] == nil || s["Formula"].Properties["total"]["type"] != "number" {
		t.Errorf("%v, %v", s["Check"].Properties["working"], s["Formula"].Properties["total"])
	}
	if slices.Contains(s["NewChange"].Required, "from") || !slices.Contains(s["Check"].Required, "rows") {
		t.Errorf("%v, %v", s["NewChange"].Required, s["Check"].Required)
	}
}

// BenchmarkCommand is one keystroke through the handler: a command on a draft of
// 40 lines, applied, checked and written as JSON. p50-ms is the middle one.
func BenchmarkCommand(b *testing.B) {
	h := server(b, nil, io.Discard)
	doc := levigate.Document{Head: map[string]string{"code": "B-40", "name": "Forty", "product": "hand-wash"}, Making: []levigate.Row{}}
	list := json.NewDecoder(ask(h, "GET", "/api/materials?text=&most=200", "", nil).Body)
	var found wire.MaterialList
	if err := list.Decode(&found); err != nil {
		b.Fatal(err)
	}
	for i := range 40 {
		cells := map[string]string{"phase": "A", "material": found.Materials[i*4].Name, "percent": "2"}
		if i == 39 {
			cells["percent"] = "qs"
		}
		doc.Lines = append(doc.Lines, levigate.Row{ID: fmt.Sprintf("row-%d", i), Cells: cells})
	}
	body, err := json.Marshal(wire.NewDraft{ID: "draft-0001", Document: &doc})
	if err != nil {
		b.Fatal(err)
	}
	if w := ask(h, "POST", "/api/drafts", string(body), nil); w.Code != 201 {
		b.Fatal(w.Body)
	}
	b.ReportAllocs()
	var took []time.Duration
	size, last := 0, "2"
	for i := 0; b.Loop(); i++ {
		next := fmt.Sprintf("2.%04d", i%10000+1)
		c := fmt.Sprintf(`{"id":"command-%d","base":%d,"label":"type","changes":[{"do":"set","list":"lines","row":"row-3","field":"percent","from":%q,"to":%q}]}`, i, i, last, next)
		start := time.Now()
		w := ask(h, "POST", "/api/drafts/draft-0001/commands", c, nil)
		took = append(took, time.Since(start))
		if last = next; w.Code != 200 {
			b.Fatal(w.Code, w.Body)
		}
		size = w.Body.Len()
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "p50-ms")
	b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "p95-ms")
	b.ReportMetric(float64(size), "bytes")
}
