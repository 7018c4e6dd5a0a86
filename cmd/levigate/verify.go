package main

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/internal/program"
)

// workspaceFlag is the folder a workspace is kept in.
type workspaceFlag struct {
	Workspace string `type:"path" placeholder:"DIR" help:"The workspace's folder; left out, levigate in your data folder."`
}

type verifyCommand struct {
	workspaceFlag
	Head string `placeholder:"HASH" help:"A hash you noted earlier: is it still that of a record?"`
}

func (verifyCommand) Help() string {
	return "Looks at the file, every formula and the chain of records, and names each record that was edited, removed, put in or moved " +
		"after it was made. Whoever may write the file can also make the whole chain anew, or put an older copy of it in place; only a hash " +
		"you noted elsewhere shows that. Note the one that is printed, and ask with --head HASH the next time." + exitHelp
}

// Run looks at the workspace and names what it found.
func (c *verifyCommand) Run(s *session) error {
	noted := strings.ToLower(strings.TrimSpace(c.Head))
	if noted != "" && (len(noted) < 64 || strings.Trim(noted, "0123456789abcdef") != "") {
		return &levigate.Error{Code: levigate.Invalid, Message: c.Head + " is not a hash of a record", Help: "give all 64 digits that levigate verify printed"}
	}
	l, err := s.VerifyWorkspace(s, c.Workspace, noted)
	if err != nil {
		return err
	}
	printLooked(s, l)
	status := printFaults(s, l)
	switch {
	case noted != "" && !l.Noted:
		fmt.Fprintf(s.err, "levigate: no record has the hash you noted\n  help: the chain was made anew or cut since, or the file is an older copy; compare with your backups\n")
		return stopped(statusBlocked)
	case noted != "":
		fmt.Fprintln(s.out, "The hash you noted is that of a record.")
	}
	return status
}

// printLooked says what there is.
func printLooked(s *session, l *program.Looked) {
	c := l.Contents
	fmt.Fprintf(s.out, "%s\n%s, %s, %s, %s\n", l.File,
		counted(c.Drafts, "formula"), counted(c.Commands, "edit"), counted(c.Versions, "version"), counted(c.Records, "record"))
	if c.Head.Seq > 0 {
		fmt.Fprintf(s.out, "Last record: %d, hash %s\n", c.Head.Seq, c.Head.Hash)
	}
}

// printFaults names what was done to records.
func printFaults(s *session, l *program.Looked) error {
	faults := l.Contents.Faults
	if len(faults) == 0 {
		if l.Contents.Records > 0 {
			fmt.Fprintln(s.out, "No record shows an edit, and none is missing.")
		}
		return nil
	}
	for _, f := range faults {
		if f.Record != "" {
			fmt.Fprintf(s.err, "levigate: record %d (%s) %s\n", f.Seq, f.Record, f.Text)
			continue
		}
		fmt.Fprintf(s.err, "levigate: %s\n", f.Text)
	}
	fmt.Fprint(s.err, "  help: keep this file as it is and compare it with your backups; a correction is a new record, never an edit of the old one\n")
	return stopped(statusBlocked)
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
