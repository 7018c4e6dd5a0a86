package api

import (
	"bytes"
	"html/template"
	"log"
	"net/http"
	"time"

	"levigate"
	"levigate/ui"
)

// Config is what a server stands on.
type Config struct {
	Workshop Workshop
	Bench    Bench
	Address  string // of the listener: host and port
	Token    string // whoever asks must hold it
	Log      *log.Logger
	// Page is the bench in the browser; nil in a program built without it.
	Page http.Handler
	// Heartbeat is how often an idle stream of events shows that it lives; zero
	// for the usual.
	Heartbeat time.Duration
}

// Server answers requests about one workshop and one bench.
type Server struct {
	config   Config
	workshop Workshop
	pages    *template.Template
	hub      *hub
	handler  http.Handler
}

// New is a server. Close ends its streams of events, which would else keep a
// listener from closing.
func New(c Config) *Server {
	if c.Log == nil {
		c.Log = log.Default()
	}
	if c.Heartbeat == 0 {
		c.Heartbeat = heartbeat
	}
	s := &Server{config: c, workshop: c.Workshop, hub: newHub(), pages: template.Must(template.New("ui").ParseFS(ui.Pages, "*.html"))}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /formulas/{$}", s.index)
	mux.HandleFunc("GET /formulas/{name}", s.formula)
	mux.HandleFunc("GET /levigate.css", static("text/css; charset=utf-8", ui.CSS()))
	mux.HandleFunc("GET /icon.svg", static("image/svg+xml", ui.Icon))
	// The bench answers at every other address, so that one may be kept. Without
	// it the read-only pages stand in.
	if c.Page != nil {
		mux.Handle("/", c.Page)
	} else {
		mux.HandleFunc("GET /{$}", s.index)
		mux.HandleFunc("/", s.nothing)
	}
	mux.HandleFunc("GET /api/events", s.events)
	mux.HandleFunc("/api/", func(w http.ResponseWriter, r *http.Request) {
		refuse(w, r, http.StatusNotFound, "there is nothing at this address", "GET /api/openapi.json lists what there is")
	})
	s.routes(mux)
	s.handler = s.guard(mux)
	return s
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// Close ends every stream of events.
func (s *Server) Close() { s.hub.close() }

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
func (s *Server) render(w http.ResponseWriter, r *http.Request, status int, page, title string, model any) {
	f := frame{Title: title, Stamp: s.workshop.Stamp(), Page: model}
	if t := r.URL.Query().Get("theme"); t == "light" || t == "dark" {
		f.Theme, f.Query = t, "?theme="+t
	}
	var b bytes.Buffer
	if err := s.pages.ExecuteTemplate(&b, page, f); err != nil {
		s.config.Log.Printf("page %s: %v", page, err)
		http.Error(w, "the page could not be made; that is our fault", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	w.Write(b.Bytes())
}

// fail shows an error as a page.
func (s *Server) fail(w http.ResponseWriter, r *http.Request, err error) {
	status := statuses[levigate.CodeOf(err)]
	text := err.Error()
	if status == http.StatusInternalServerError {
		s.config.Log.Printf("%s: %v", r.Pattern, err)
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

func (s *Server) nothing(w http.ResponseWriter, r *http.Request) {
	s.fail(w, r, &levigate.Error{Code: levigate.NotFound, Message: "There is nothing at this address."})
}

func static(kind string, body []byte) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", kind)
		w.Header().Set("Cache-Control", "no-cache")
		w.Write(body)
	}
}
