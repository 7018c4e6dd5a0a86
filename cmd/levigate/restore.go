package main

import "fmt"

type restoreCommand struct {
	File string `arg:"" help:"A file that levigate backup made."`
	workspaceFlag
	Replace      bool `help:"Take the place of a workspace that holds something; its file is kept beside the new one."`
	AcceptFaults bool `help:"Bring back also a backup whose records were edited by hand."`
}

func (restoreCommand) Help() string {
	return "The file is copied and all of the copy looked at before anything is replaced. End levigate serve first." + exitHelp
}

// Run brings the backup back and says what is there now.
func (c *restoreCommand) Run(s *session) error {
	l, kept, err := s.RestoreWorkspace(s, c.Workspace, c.File, c.Replace, c.AcceptFaults)
	if err != nil {
		return err
	}
	printLooked(s, l)
	if kept != "" {
		fmt.Fprintf(s.out, "The file that was there is kept as %s\n", kept)
	}
	return printFaults(s, l)
}
