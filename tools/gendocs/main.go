// Command gendocs writes the files of docs/ that come from the code: rules,
// messages, methods, validation, tables, and what the HTTP interface takes.
//
//	go run ./tools/gendocs          writes them
//	go run ./tools/gendocs -check   fails when the committed pages differ
//
// Exit: 0 done or equal; 1 pages differ; 2 wrong use or a file that cannot be
// read or written.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"levigate/internal/api"
	"levigate/tools/newrule/skeleton"
)

func main() {
	check := flag.Bool("check", false, "compare with the committed pages instead of writing them")
	flag.Parse()
	os.Exit(run(*check, os.Stdout, os.Stderr))
}

func run(check bool, out, log io.Writer) int {
	root, err := skeleton.Root()
	if err != nil {
		fmt.Fprintln(log, "gendocs:", err)
		return 2
	}
	docs := filepath.Join(root, "docs")
	if check {
		differ, err := differing(docs, pages())
		switch {
		case err != nil:
			fmt.Fprintln(log, "gendocs:", err)
			return 2
		case len(differ) > 0:
			for _, name := range differ {
				fmt.Fprintf(log, "docs/%s differs from the code\n", name)
			}
			fmt.Fprintln(log, "help: run go run ./tools/gendocs and review the difference")
			return 1
		}
		return 0
	}
	if err := write(docs, pages()); err != nil {
		fmt.Fprintln(log, "gendocs:", err)
		return 2
	}
	fmt.Fprintf(out, "wrote %d pages\n", len(pages()))
	return 0
}

// page is one generated file.
type page struct {
	name string
	text string
}

// pages makes every page, in memory.
func pages() []page {
	return []page{
		{"rules.md", rulesPage()},
		{"messages.md", messagesPage()},
		{"methods.md", methodsPage()},
		{"validation.md", validationPage()},
		{"tables.md", tablesPage()},
		{"openapi.json", string(api.OpenAPI())},
	}
}

func write(dir string, pages []page) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for _, p := range pages {
		if err := os.WriteFile(filepath.Join(dir, p.name), []byte(p.text), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// differing names the pages whose committed text is another; a missing one
// counts.
func differing(dir string, pages []page) ([]string, error) {
	var out []string
	for _, p := range pages {
		have, err := os.ReadFile(filepath.Join(dir, p.name))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		// A checkout may have given the lines other ends.
		if !bytes.Equal(bytes.ReplaceAll(have, []byte("\r\n"), []byte("\n")), []byte(p.text)) {
			out = append(out, p.name)
		}
	}
	return out, nil
}
