// Command dev builds, runs and proves the program: one set of recipes in Go, so
// that Linux, macOS and Windows do the same with nothing but Go installed. The
// Makefile and .ci/run are thin lines over it.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// command is one word after dev.
type command struct {
	name  string
	about string
	args  string // what it takes after its name, for the list; none when empty
	run   func(ctx context.Context, p place, args []string) error
}

// place is where a command works and where it says what it does.
type place struct {
	root     string    // the folder that holds go.mod
	out, log io.Writer // results; headings and times
}

var commands = []command{
	{"run", "build the program and open the bench", "serve's flags", runProgram},
	{"test", "lint, all tests, the generated pages, and the bench in a browser", "", runTest},
	{"test-long", "the same with the long tests, then fuzzing", "", runTestLong},
	{"lint", "gofmt, vet, staticcheck", "", runLint},
	{"bench", "benchmarks six times over, to be kept and compared", "", runBenchmarks},
	{"latency", "how long she waits: keystroke to figures, page, memory, in a browser", "playwright's flags", runLatency},
	{"docs", "write the generated pages again", "", runDocs},
	{"refit", "fit the constants again from the tables they came from", "refit's flags", runRefit},
}

// usageError is a slip in what was typed; it exits 2 where a failed command
// exits 1.
type usageError string

func (e usageError) Error() string { return string(e) }

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	err := start(ctx, commands, os.Args[1:], os.Stdout, os.Stderr)
	if err == nil {
		return
	}
	fmt.Fprintln(os.Stderr, "dev:", err)
	if _, slip := errors.AsType[usageError](err); slip {
		os.Exit(2)
	}
	os.Exit(1)
}

// start finds the command that args name and runs it at the top of the
// repository; without args it lists the commands.
func start(ctx context.Context, commands []command, args []string, out, log io.Writer) error {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		list(commands, out)
		return nil
	}
	for _, c := range commands {
		if c.name != args[0] {
			continue
		}
		if c.args == "" && len(args) > 1 {
			return usageError(fmt.Sprintf("%s takes nothing more; got %q", c.name, args[1:]))
		}
		root, err := findRoot(".")
		if err != nil {
			return err
		}
		return c.run(ctx, place{root: root, out: out, log: log}, args[1:])
	}
	list(commands, log)
	return usageError(fmt.Sprintf("no command is called %q", args[0]))
}

func list(commands []command, w io.Writer) {
	fmt.Fprint(w, "go run ./tools/dev COMMAND, or make COMMAND\n\n")
	for _, c := range commands {
		takes := ""
		if c.args != "" {
			takes = " (takes " + c.args + ")"
		}
		fmt.Fprintf(w, "  %-10s %s%s\n", c.name, c.about, takes)
	}
}
