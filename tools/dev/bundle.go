package main

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
)

// mostFirstLoad is how many bytes, compressed, the bench may take before it can
// be used, fonts included.
const mostFirstLoad = 350_000

// part is one file of the first load.
type part struct {
	name  string
	bytes int
}

// load is what a browser fetches to show the page.
type load []part

var (
	pageLoads = regexp.MustCompile(`(?:src|href)="/(assets/[^"]+)"`)
	imports   = regexp.MustCompile(`(?:import|from)\s*["']\./([^"']+\.js)["']`)
	faces     = regexp.MustCompile(`(?s)@font-face\s*\{[^}]*\}`)
	faceFile  = regexp.MustCompile(`url\(["']?/(assets/[^)"']+)`)
	basic     = regexp.MustCompile(`(?i)unicode-range:[^;}]*U\+(?:\?\?|0{1,4}-0{0,2}FF)`)
)

// firstLoad measures the build in dir: the page, the scripts and style sheets
// it names, the scripts those import before they run, and of the fonts every
// face with the basic Latin letters, used on the first page or not. A face for
// other letters is only fetched for a text that holds one.
func firstLoad(dir string) (load, error) {
	var l load
	seen := map[string]bool{}
	queue := []string{"index.html"}
	for len(queue) > 0 {
		name := queue[0]
		queue = queue[1:]
		if seen[name] {
			continue
		}
		seen[name] = true
		body, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
		if err != nil {
			return nil, fmt.Errorf("first load: %w", err)
		}
		size, err := compressed(name, body)
		if err != nil {
			return nil, err
		}
		l = append(l, part{name, size})
		queue = append(queue, loadedBy(name, string(body))...)
	}
	if len(l) < 2 {
		return nil, errors.New("first load: the page names no script, so there is nothing to measure")
	}
	return l, nil
}

func loadedBy(name, text string) []string {
	var next []string
	all := func(r *regexp.Regexp, text, folder string) {
		for _, m := range r.FindAllStringSubmatch(text, -1) {
			next = append(next, path.Join(folder, m[1]))
		}
	}
	switch path.Ext(name) {
	case ".html":
		all(pageLoads, text, "")
	case ".js":
		all(imports, text, path.Dir(name))
	case ".css":
		for _, face := range faces.FindAllString(text, -1) {
			if basic.MatchString(face) || !strings.Contains(face, "unicode-range") {
				all(faceFile, face, "")
			}
		}
	}
	return next
}

// compressed is the size on the wire; fonts are compressed already.
func compressed(name string, body []byte) (int, error) {
	if path.Ext(name) == ".woff2" {
		return len(body), nil
	}
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	_, err := z.Write(body)
	err = errors.Join(err, z.Close())
	return b.Len(), err
}

func (l load) total() int {
	n := 0
	for _, p := range l {
		n += p.bytes
	}
	return n
}

func (l load) String() string {
	var b strings.Builder
	for _, p := range l {
		fmt.Fprintf(&b, "%9.1f kB  %s\n", float64(p.bytes)/1000, p.name)
	}
	fmt.Fprintf(&b, "%9.1f kB  first load, compressed\n", float64(l.total())/1000)
	return b.String()
}

func (l load) within(most int) error {
	if n := l.total(); n > most {
		return fmt.Errorf("the first load is %.1f kB compressed, over the %d kB it may have", float64(n)/1000, most/1000)
	}
	return nil
}
