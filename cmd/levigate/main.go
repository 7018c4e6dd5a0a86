// Command levigate checks formulas from the command line and shows them in the
// browser. Every command is one file here and a thin view over the services of
// internal/program.
package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"

	"github.com/alecthomas/kong"

	"levigate/internal/program"
)

// commands is the whole command line.
type commands struct {
	Assess      assessCommand      `cmd:"" help:"Check one or more formula files."`
	Backup      backupCommand      `cmd:"" help:"Copy the workspace into a new file, also while the bench is open."`
	Calc        calcCommand        `cmd:"" help:"Answer one question from typed inputs."`
	Cost        costCommand        `cmd:"" help:"Cost the raw materials of a formula from a price list."`
	Explain     explainCommand     `cmd:"" help:"Say what a figure, method, rule or table is, with sources."`
	Ingredients ingredientsCommand `cmd:"" help:"Draft the ingredient list of one or more formula files."`
	Restore     restoreCommand     `cmd:"" help:"Bring a backup back."`
	Serve       serveCommand       `cmd:"" help:"Write and check formulas in the browser."`
	Schema      schemaCommand      `cmd:"" help:"Print the JSON Schema of the formula file."`
	Verify      verifyCommand      `cmd:"" help:"Look at the workspace and name every record edited or removed by hand."`
	Weigh       weighCommand       `cmd:"" help:"Make the weighing list of a formula for a batch and the balances at hand."`
	Completion  completionCommand  `cmd:"" help:"Print a completion script for a shell."`
	Version     kong.VersionFlag   `help:"Print the version and end."`
}

// session is what a command works with; tests give it their own.
type session struct {
	context.Context
	*program.Program
	in       io.Reader
	out, err io.Writer
	model    *kong.Kong
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	status := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}
