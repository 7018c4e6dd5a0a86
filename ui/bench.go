package ui

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"io/fs"
	"net/http"
	"path"
	"strings"
	"time"
)

// dist is the bench as Vite built it, in app. The build is not committed; the
// .keep beside it is, so that the program builds on a clone without Node.
//
//go:embed all:bench/dist
var dist embed.FS

// HowToBuild is what someone reads who runs a program built without the bench.
const HowToBuild = "This program was built without its bench. With Node 20.19 or newer installed, go run ./tools/dev run builds and opens it."

//go:embed unbuilt.html
var unbuilt string

// BenchBuilt says whether this program carries the bench.
func BenchBuilt() bool { return built(app()) }

// Bench answers with the bench: its page for every address that is no file, so
// that one can be kept as a bookmark, and the files the page loads. Without a
// build it says how to make one.
func Bench() http.Handler { return benchOf(app()) }

func app() fs.FS {
	app, err := fs.Sub(dist, "bench/dist/app")
	if err != nil {
		panic(err) // the path above is not valid
	}
	return app
}

func built(app fs.FS) bool {
	_, err := fs.Stat(app, page)
	return err == nil
}

const (
	page    = "index.html"
	hashed  = "assets/" // its files are named for what they hold
	forever = "public, max-age=31536000, immutable"
)

func benchOf(app fs.FS) http.Handler {
	if !built(app) {
		return http.HandlerFunc(sayUnbuilt)
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "the page can only be read", http.StatusMethodNotAllowed)
			return
		}
		name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
		// A script that is gone must not be answered with a page: the browser
		// would report a fault of the script, not that it is gone.
		if path.Ext(name) == "" && !strings.HasPrefix(name, hashed) {
			name = page
		}
		body, err := fs.ReadFile(app, name)
		kind, known := kinds[path.Ext(name)]
		if err != nil || !known {
			http.Error(w, "there is nothing at this address", http.StatusNotFound)
			return
		}
		h := w.Header()
		h.Set("Content-Type", kind)
		h.Set("Cache-Control", "no-cache")
		if strings.HasPrefix(name, hashed) {
			h.Set("Cache-Control", forever)
		}
		h.Set("ETag", tag(body))
		http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(body))
	})
}

// kinds are the files a build may hold. They are not asked of the machine,
// whose own list can call a script plain text.
var kinds = map[string]string{
	".html":  "text/html; charset=utf-8",
	".js":    "text/javascript; charset=utf-8",
	".css":   "text/css; charset=utf-8",
	".svg":   "image/svg+xml",
	".woff2": "font/woff2",
	".txt":   "text/plain; charset=utf-8",
	".md":    "text/plain; charset=utf-8",
}

func tag(body []byte) string {
	sum := sha256.Sum256(body)
	return `"` + base64.RawURLEncoding.EncodeToString(sum[:12]) + `"`
}

func sayUnbuilt(w http.ResponseWriter, _ *http.Request) {
	h := w.Header()
	h.Set("Content-Type", kinds[".html"])
	h.Set("Cache-Control", "no-store")
	w.WriteHeader(http.StatusServiceUnavailable)
	w.Write([]byte(strings.ReplaceAll(unbuilt, "HOW", HowToBuild)))
}
