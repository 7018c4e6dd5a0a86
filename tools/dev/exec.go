package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"time"
)

const (
	politeWait = 500 * time.Millisecond
	killWait   = 10 * time.Second
)

// program prepares a program that works at the root with its output streamed.
//
// Ctrl-C in a terminal reaches the started program as well as this one, and a
// second one would cut its orderly end short; a signal sent to this process
// alone reaches only this one. So the interrupt is passed on a moment later, to
// a program that has not ended by itself.
func (p place) program(ctx context.Context, name string, args ...string) *exec.Cmd {
	c := exec.CommandContext(ctx, name, args...)
	c.Dir, c.Stdin, c.Stdout, c.Stderr = p.root, os.Stdin, p.out, p.log
	c.Cancel = func() error {
		time.Sleep(politeWait)
		return c.Process.Signal(os.Interrupt)
	}
	c.WaitDelay = killWait
	return c
}

// goTool runs the go command. Every command here builds with the same flags: a
// -race or -trimpath in one of them would compile everything twice.
func (p place) goTool(ctx context.Context, args ...string) error {
	return p.program(ctx, "go", args...).Run()
}

// goOutput runs the go command and returns what it printed.
func (p place) goOutput(ctx context.Context, args ...string) (string, error) {
	var b bytes.Buffer
	p.out = &b
	err := p.goTool(ctx, args...)
	return b.String(), err
}
