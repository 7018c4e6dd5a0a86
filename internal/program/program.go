package program

import (
	"context"
	"crypto/rand"
	"encoding/base64"
	"errors"
	"io/fs"
	"log"
	"net"
	"net/http"
	"time"

	"levigate"
	"levigate/examples"
	"levigate/internal/api"
	"levigate/internal/library"
	"levigate/ui"
)

// Version is the release this program was built from.
const Version = "0.1.0-dev"

// Program is Levigate, ready to answer. The zero value is not: use New.
type Program struct {
	Library levigate.Library
	Version string
	Clock   func() time.Time
	// Folder holds the formula files the page shows.
	Folder fs.FS
	// Workspace is the folder that drafts are kept in; empty for the user's own.
	Workspace string
	OpenStore OpenStore
	// Page is the bench in the browser; nil where it was not built in.
	Page http.Handler
	Log  *log.Logger

	listener net.Listener
	token    string // of this start
	store    levigate.Store
	bench    *Bench
}

// New is a program with the embedded raw materials and the demo workshop.
func New() *Program {
	p := &Program{Library: library.New(nil), Version: Version, Clock: time.Now, Folder: examples.Files, OpenStore: onDisk, Log: log.Default()}
	if ui.BenchBuilt() {
		p.Page = ui.Bench()
	}
	return p
}

// Listen takes an address of this machine for the page; port 0 takes a free
// one. An address that others could reach is refused: there is no login.
func (p *Program) Listen(addr string) error {
	if err := loopback(addr); err != nil {
		return err
	}
	l, err := net.Listen("tcp", addr)
	if err != nil {
		return &levigate.Error{Code: levigate.Invalid, Message: "the page cannot listen on " + addr,
			Help: "another program may have that port; name another with --addr 127.0.0.1:0", Cause: err}
	}
	p.listener, p.token = l, newToken()
	return nil
}

// newToken is what whoever asks must hold: as hard to guess as a key, and new
// at each start.
func newToken() string {
	b := make([]byte, 32)
	rand.Read(b) // never fails
	return base64.RawURLEncoding.EncodeToString(b)
}

// URL is where the page is found once Listen has succeeded.
func (p *Program) URL() string { return "http://" + p.listener.Addr().String() + "/" }

// Token is what every request carries.
func (p *Program) Token() string { return p.token }

// LaunchURL is the address to open: it hands the token to the browser.
func (p *Program) LaunchURL() string { return p.URL() + "?token=" + p.token }

// Run serves the page until the context ends.
func (p *Program) Run(ctx context.Context) error {
	if err := p.Open(ctx); err != nil {
		return err
	}
	answers := api.New(api.Config{Workshop: p, Bench: p.bench, Address: p.listener.Addr().String(), Token: p.token, Page: p.Page, Log: p.Log})
	server := &http.Server{
		Handler:           answers,
		ErrorLog:          p.Log,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       10 * time.Second,
		WriteTimeout:      30 * time.Second,
		IdleTimeout:       60 * time.Second,
		MaxHeaderBytes:    1 << 16,
	}
	// A stream of events is never idle: it has to be told.
	server.RegisterOnShutdown(answers.Close)
	done := make(chan error, 1)
	go func() { done <- server.Serve(p.listener) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	// Pages under way may finish; nobody waits long for them.
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), 3*time.Second)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		return server.Close()
	}
	if err := <-done; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// Close gives back what Listen and Open took. What was acknowledged is kept.
func (p *Program) Close() error {
	var errs []error
	if p.listener != nil {
		if err := p.listener.Close(); !errors.Is(err, net.ErrClosed) {
			errs = append(errs, err)
		}
	}
	if p.store != nil {
		errs = append(errs, p.store.Close())
		p.store, p.bench = nil, nil
	}
	return errors.Join(errs...)
}
