// Command newmethod writes the skeleton of a method. It compiles, and its test
// fails until it is filled in.
//
//	go run ./tools/newmethod water osmotic              an equation in named numbers
//	go run ./tools/newmethod -procedure pack dry-life   anything else
//
// A topic that has no folder yet gets one, with its test.
package main

import (
	"errors"
	"flag"
	"fmt"
	"go/token"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"levigate/tools/newrule/skeleton"
)

func main() {
	root, err := skeleton.Root()
	if err != nil {
		fmt.Fprintln(os.Stderr, "newmethod:", err)
		os.Exit(1)
	}
	os.Exit(run(root, os.Args[1:], os.Stdout, os.Stderr))
}

func run(root string, args []string, out, log io.Writer) int {
	flags := flag.NewFlagSet("newmethod", flag.ContinueOnError)
	flags.SetOutput(log)
	procedure := flags.Bool("procedure", false, "a sum, a root, an integral: prose instead of an equation")
	if err := flags.Parse(args); err != nil || flags.NArg() != 2 {
		fmt.Fprintln(log, "usage: go run ./tools/newmethod [-procedure] topic name-with-hyphens")
		return 2
	}
	files, err := method(root, flags.Arg(0), flags.Arg(1), *procedure)
	if err == nil {
		err = skeleton.Write(root, files...)
	}
	if err != nil {
		fmt.Fprintln(log, "newmethod:", err)
		return 1
	}
	for _, f := range files {
		fmt.Fprintln(out, "wrote", f.Path)
	}
	fmt.Fprintf(out, "next: fill it in until go test ./calc/%s passes, then go run ./tools/gendocs\n", flags.Arg(0))
	return 0
}

var (
	topicName  = regexp.MustCompile(`^[a-z]+$`)
	methodName = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
)

// method is the file of a method and, for a topic that is new, what its folder
// needs besides.
func method(root, topic, name string, procedure bool) ([]skeleton.File, error) {
	switch {
	case !topicName.MatchString(topic) || token.IsKeyword(topic):
		return nil, fmt.Errorf("%q is no topic: one word in lower case", topic)
	case !methodName.MatchString(name):
		return nil, fmt.Errorf("%q is no name: lower case with hyphens, a letter first", name)
	}
	text := equation
	if procedure {
		text = procedural
	}
	fill := strings.NewReplacer("TOPIC", topic, "NAME", name, "FUNC", exported(name)).Replace
	folder := "calc/" + topic
	files := []skeleton.File{{Path: folder + "/" + strings.ReplaceAll(name, "-", "_") + ".go", Text: fill(text)}}
	there, err := filepath.Glob(filepath.Join(root, folder, "*.go"))
	if err != nil {
		return nil, errors.New("the folder of the topic cannot be read")
	}
	if len(there) == 0 {
		files = append(files, skeleton.File{Path: folder + "/doc.go", Text: fill(doc)}, skeleton.File{Path: folder + "/methods_test.go", Text: fill(test)})
	}
	return files, nil
}

// exported turns dry-life into DryLife.
func exported(name string) string {
	var b strings.Builder
	for _, word := range strings.Split(name, "-") {
		b.WriteString(strings.ToUpper(word[:1]) + word[1:])
	}
	return b.String()
}
