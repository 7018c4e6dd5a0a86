package api

import (
	"context"
	"errors"
	"io"
	"log"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"levigate"
	"levigate/quantity"
	"levigate/work"
)

// shelf is a workshop in memory.
type shelf struct {
	sheets []Sheet
	err    error
}

func (s shelf) Sheets(context.Context) ([]Sheet, error) { return s.sheets, s.err }
func (s shelf) Demo() bool                              { return true }
func (s shelf) Stamp() string                           { return "levigate test" }
func (s shelf) Sheet(_ context.Context, name string) (*Sheet, error) {
	for i := range s.sheets {
		if s.sheets[i].Name == name {
			return &s.sheets[i], s.err
		}
	}
	return nil, &levigate.Error{Code: levigate.NotFound, Message: "no formula is called " + name}
}

// nasty is a sheet whose every text tries to be markup.
func nasty() Sheet {
	const text = `<script>alert("x")</script>`
	m := &levigate.Material{Name: text, Declared: []levigate.Share{{INCI: text, Percent: levigate.Exactly(100)}}, Role: []string{text}}
	f := work.Figure{ID: "water.activity", Title: "Water activity", Unit: quantity.One, State: work.Good, Notes: []string{text}}
	f.SetBand(0.3, []work.Move{{Cause: &work.Cause{Name: text, Settle: text}, Low: -0.02, High: 0.04}}, 0, 1)
	finding := levigate.Finding{Rule: "W99", Severity: levigate.Stop, Verdict: levigate.Broken, Text: text, Help: text, Needs: text}
	on := func(at ...string) levigate.Finding { n := finding; n.At = at; return n }
	return Sheet{Name: "n", File: text, Answer: text, Cautions: text, Product: text, Assessment: &levigate.Assessment{
		Formula: &levigate.Formula{Code: text, Name: text, Notes: text, Claims: []string{text},
			Lines: []levigate.Line{{Phase: text, Name: text, Percent: quantity.Hundred, Match: levigate.Match{Material: m}}}},
		Figures:     levigate.Figures{f},
		Composition: levigate.Composition{Contained: []levigate.Contained{{INCI: text}}, Held: []levigate.Held{{Name: text, Grams: levigate.Exactly(1)}}},
		Curves: []levigate.Curve{{ID: "water.isotherm", X: levigate.Axis{Values: []float64{0.1, 0.9}}, Y: levigate.Axis{Values: []float64{1, 9}}, Low: []float64{1, 9}, High: []float64{1, 9},
			Marks: []levigate.CurveMark{{ID: "formula", X: 0.3, Y: 3}, {ID: "limit/x", Text: text, X: 0.6, Y: 6}}}},
		Findings: []levigate.Finding{on("lines/0"), on("figures/water.activity"), on()},
	}}
}

func get(t *testing.T, h http.Handler, change func(*http.Request)) (int, http.Header, string) {
	t.Helper()
	r := httptest.NewRequest("GET", "http://127.0.0.1:7420/", nil)
	r.AddCookie(&http.Cookie{Name: cookieName, Value: token})
	change(r)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	body, err := io.ReadAll(w.Result().Body)
	if err != nil {
		t.Fatal(err)
	}
	return w.Code, w.Header(), string(body)
}

const address, token = "127.0.0.1:7420", "a-token-of-this-test"

func handlerOf(w Workshop) http.Handler {
	return New(Config{Workshop: w, Address: address, Token: token, Log: log.New(io.Discard, "", 0)})
}

func to(path string) func(*http.Request) {
	return func(r *http.Request) { r.URL.Path = path }
}

// Nothing in a formula file becomes markup, on any page.
func TestTextNeverBecomesMarkup(t *testing.T) {
	h := handlerOf(shelf{sheets: []Sheet{nasty(), {Name: "p", File: "<script>", Problems: []levigate.Problem{{Text: "<script>", Help: "<script>"}}}}})
	for _, path := range []string{"/", "/formulas/n", "/formulas/p", "/formulas/<script>"} {
		status, _, body := get(t, h, to(path))
		if status != 200 && status != 404 {
			t.Errorf("%s: %d", path, status)
		}
		if strings.Contains(body, "<script") {
			t.Errorf("%s: text became markup", path)
		}
		if strings.Contains(body, "ZgotmplZ") {
			t.Errorf("%s: a template put text where it must not stand", path)
		}
	}
}

func TestGuard(t *testing.T) {
	h := handlerOf(shelf{})
	for _, c := range []struct {
		name   string
		change func(*http.Request)
		want   int
	}{
		{"own address", func(*http.Request) {}, 200},
		{"localhost", func(r *http.Request) { r.Host = "localhost:7420" }, 200},
		{"IPv6", func(r *http.Request) { r.Host = "[::1]:7420" }, 200},
		{"another name that points here", func(r *http.Request) { r.Host = "evil.example:7420" }, 421},
		{"own name, another port", func(r *http.Request) { r.Host = "localhost:80" }, 421},
		{"no name", func(r *http.Request) { r.Host = "" }, 421},
		{"a form of another site", func(r *http.Request) { r.Method = "POST"; r.Header.Set("Origin", "https://evil.example") }, 403},
		{"something that writes", func(r *http.Request) { r.Method = "DELETE" }, 405},
		{"no token", func(r *http.Request) { r.Header.Del("Cookie") }, 401},
		{"a wrong token", func(r *http.Request) { r.Header.Set("Cookie", cookieName+"=wrong") }, 401},
		{"a wrong token in the address", func(r *http.Request) { r.Header.Del("Cookie"); r.URL.RawQuery = "token=wrong" }, 401},
		{"the token in another address", func(r *http.Request) {
			r.Header.Del("Cookie")
			r.URL.Path = "/formulas/x"
			r.URL.RawQuery = "token=" + token
		}, 401},
		{"a wrong bearer beside a good cookie", func(r *http.Request) { r.Header.Set("Authorization", "Bearer wrong") }, 401},
		{"a bearer", func(r *http.Request) { r.Header.Del("Cookie"); r.Header.Set("Authorization", "Bearer "+token) }, 200},
		{"a cookie left by another start", func(r *http.Request) { r.Header.Set("Cookie", cookieName+"=old; "+cookieName+"="+token) }, 200},
		{"another site's picture", func(r *http.Request) {
			r.Header.Set("Sec-Fetch-Site", "cross-site")
			r.Header.Set("Sec-Fetch-Mode", "no-cors")
		}, 403},
		{"another port's page asks the interface", func(r *http.Request) { r.URL.Path = "/api/drafts"; r.Header.Set("Sec-Fetch-Site", "same-site") }, 403},
		{"a link followed", func(r *http.Request) {
			r.Header.Set("Sec-Fetch-Site", "cross-site")
			r.Header.Set("Sec-Fetch-Mode", "navigate")
		}, 200},
		{"head", func(r *http.Request) { r.Method = "HEAD" }, 200},
		{"nowhere", to("/elsewhere"), 404},
		{"climbing out", to("/formulas/../../etc"), 404},
	} {
		status, header, _ := get(t, h, c.change)
		if status != c.want && (c.want != 404 || status/100 != 3) {
			t.Errorf("%s: %d, want %d", c.name, status, c.want)
		}
		if p := header.Get("Content-Security-Policy"); !strings.Contains(p, "default-src 'none'") || strings.Contains(p, "unsafe") {
			t.Errorf("%s: policy is %q", c.name, p)
		}
	}
}

// What went wrong inside stays inside; the reader hears that it was not her.
func TestOurFaultIsNotShown(t *testing.T) {
	status, _, body := get(t, handlerOf(shelf{err: errors.New("secret/path: disk")}), to("/"))
	if status != 500 || strings.Contains(body, "secret") || !strings.Contains(body, "our fault") {
		t.Errorf("%d %s", status, body)
	}
}

func TestPageSaysTheBandWithTheActivity(t *testing.T) {
	_, _, body := get(t, handlerOf(shelf{sheets: []Sheet{nasty()}}), to("/formulas/n"))
	for _, want := range []string{"0.28–0.34", "Water activity 0.30, between 0.28 and 0.34, nine times in ten", "Must be settled before release", "not asked for"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
}
