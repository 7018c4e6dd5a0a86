package program

import (
	"context"
	"errors"
	"io/fs"
	"net"
	"net/http"
	"time"

	"levigate"
	"levigate/examples"
	"levigate/internal/api"
	"levigate/internal/library"
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

	listener net.Listener
}

// New is a program with the embedded raw materials and the demo workshop.
func New() *Program {
	return &Program{Library: library.New(nil), Version: Version, Clock: time.Now, Folder: examples.Files}
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
	p.listener = l
	return nil
}

// URL is where the page is found once Listen has succeeded.
func (p *Program) URL() string { return "http://" + p.listener.Addr().String() + "/" }

// Run serves the page until the context ends.
func (p *Program) Run(ctx context.Context) error {
	server := &http.Server{
		Handler:           api.Handler(p, p.listener.Addr().String()),
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       10 * time.Second,
		WriteTimeout:      30 * time.Second,
		IdleTimeout:       60 * time.Second,
		MaxHeaderBytes:    1 << 16,
	}
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

// Close gives back what Listen took; Run does so by itself.
func (p *Program) Close() error {
	if p.listener == nil {
		return nil
	}
	if err := p.listener.Close(); !errors.Is(err, net.ErrClosed) {
		return err
	}
	return nil
}
