package api

import (
	"bytes"
	"html/template"
	"log"
	"net/http"

	"levigate"
	"levigate/ui"
)

// server answers requests about one workshop.
type server struct {
	workshop Workshop
	pages    *template.Template
}

// Handler is the page of a workshop, for a listener at address.
func Handler(w Workshop, address string) http.Handler {
	s := &server{workshop: w, pages: template.Must(template.New("ui").ParseFS(ui.Pages, "*.html"))}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", s.index)
	mux.HandleFunc("GET /formulas/{name}", s.formula)
	mux.HandleFunc("GET /levigate.css", static("text/css; charset=utf-8", ui.CSS()))
	mux.HandleFunc("GET /icon.svg", static("image/svg+xml", ui.Icon))
	mux.HandleFunc("/", s.nothing)
	return guard(mux, address)
}

// frame is what every page has around it.
type frame struct {
	Title string
	Theme string // "light", "dark" or empty for what the reader's machine says
	Query string // keeps the theme in links
	Stamp string
	Page  any
}

// render writes a page whole or not at all: a template that fails half way
// must not leave half a page with a good status.
func (s *server) render(w http.ResponseWriter, r *http.Request, status int, page, title string, model any) {
	f := frame{Title: title, Stamp: s.workshop.Stamp(), Page: model}
	if t := r.URL.Query().Get("theme"); t == "light" || t == "dark" {
		f.Theme, f.Query = t, "?theme="+t
	}
	var b bytes.Buffer
	if err := s.pages.ExecuteTemplate(&b, page, f); err != nil {
		log.Printf("page %s: %v", page, err)
		http.Error(w, "the page could not be made; that is our fault", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	w.Write(b.Bytes())
}

// fail shows an error as a page.
func (s *server) fail(w http.ResponseWriter, r *http.Request, err error) {
	status := statuses[levigate.CodeOf(err)]
	text := err.Error()
	if status == http.StatusInternalServerError {
		log.Printf("%s: %v", r.URL.Path, err)
		text = "Something went wrong here; that is our fault."
	}
	s.render(w, r, status, "error.html", "Not shown", text)
}

// statuses is the one table from error codes to HTTP.
var statuses = map[levigate.Code]int{
	levigate.Invalid:  http.StatusBadRequest,
	levigate.NotFound: http.StatusNotFound,
	levigate.Conflict: http.StatusConflict,
	levigate.Internal: http.StatusInternalServerError,
}

func (s *server) nothing(w http.ResponseWriter, r *http.Request) {
	s.fail(w, r, &levigate.Error{Code: levigate.NotFound, Message: "There is nothing at this address."})
}

func static(kind string, body []byte) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", kind)
		w.Header().Set("Cache-Control", "no-cache")
		w.Write(body)
	}
}
