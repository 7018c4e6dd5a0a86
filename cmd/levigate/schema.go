package main

import (
	"strings"

	"levigate/formulafile"
)

type schemaCommand struct{}

func (schemaCommand) Help() string {
	return "An editor that reads JSON Schema can check and complete formula files with it." + exitHelp
}

// Run prints the schema.
func (schemaCommand) Run(s *session) error {
	_, err := s.out.Write([]byte(strings.TrimRight(string(formulafile.Schema()), "\n") + "\n"))
	return err
}
