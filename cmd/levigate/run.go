package main

import (
	"context"
	"fmt"
	"io"
	"runtime/debug"

	"github.com/alecthomas/kong"

	"levigate/internal/program"
)

// ended carries the status kong wants to end with, after help or version.
type ended int

// run reads the command line, runs one command and gives the exit status.
func run(ctx context.Context, args []string, in io.Reader, out, errs io.Writer) (status int) {
	defer func() {
		switch r := recover().(type) {
		case nil:
		case ended:
			status = int(r)
		default:
			// Whatever a formula holds, it must not end in a stack trace alone.
			fmt.Fprintf(errs, "levigate: something went wrong here; that is our fault: %v\n\n%s", r, debug.Stack())
			status = statusFault
		}
	}()
	p := program.New()
	var cli commands
	parser, err := kong.New(&cli,
		kong.Name("levigate"),
		kong.Description("Formula checks for cosmetic products low in water."+exitHelp),
		kong.Vars{"version": "levigate " + p.Version},
		kong.Writers(out, errs),
		kong.Exit(func(code int) { panic(ended(code)) }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, WrapUpperBound: 88}),
		kong.WithHyphenPrefixedParameters(true),
	)
	if err != nil {
		panic(err)
	}
	if len(args) == 0 {
		args = []string{"--help"}
	}
	command, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(errs, "levigate: %s\n  help: levigate --help lists the commands\n", err)
		return statusUnread
	}
	answer := &heard{Writer: out}
	s := &session{Context: ctx, Program: p, in: in, out: answer, err: errs, model: parser}
	return answer.status(statusOf(command.Run(s), errs), errs)
}
