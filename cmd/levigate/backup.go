package main

type backupCommand struct {
	File string `arg:"" help:"The new file; nothing is overwritten."`
	workspaceFlag
}

func (backupCommand) Help() string {
	return "The bench may stay open. The copy is then opened and all of it looked at. Copying workspace.db by hand while the bench is open " +
		"is no backup: the last edits are in another file. Keep the copy on another disk." + exitHelp
}

// Run makes the copy and says what is in it.
func (c *backupCommand) Run(s *session) error {
	l, err := s.BackupWorkspace(s, c.Workspace, c.File)
	if err != nil {
		return err
	}
	printLooked(s, l)
	return printFaults(s, l)
}
