package main

import (
	"html/template"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
)

// openPage asks the desktop to show a page. Its address holds the token, and the
// words a program is started with are there for everyone who uses the machine
// to read: so the desktop is given a file, readable by its owner only, that
// leads on. forget removes it. Where there is no desktop nothing happens: the
// address is printed anyway.
func openPage(url string) (forget func(), err error) {
	dir, err := os.MkdirTemp("", "levigate")
	if err != nil {
		return nil, err
	}
	forget = func() { os.RemoveAll(dir) }
	file := filepath.Join(dir, "levigate.html")
	if err := writeLead(file, url); err != nil {
		forget()
		return nil, err
	}
	name := "xdg-open"
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name = "explorer"
	}
	cmd := exec.Command(name, file)
	if cmd.Start() == nil {
		go cmd.Wait()
	}
	return forget, nil
}

var lead = template.Must(template.New("lead").Parse(`<!doctype html>
<meta charset="utf-8">
<meta name="referrer" content="no-referrer">
<meta http-equiv="refresh" content="0; url={{.}}">
<title>Levigate</title>
<a href="{{.}}">Levigate</a>
`))

func writeLead(file, url string) error {
	f, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	err = lead.Execute(f, template.URL(url))
	if shut := f.Close(); err == nil {
		err = shut
	}
	return err
}
