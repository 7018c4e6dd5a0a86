package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"levigate"
)

type serveCommand struct {
	Addr      string `default:"127.0.0.1:7420" help:"Where to listen, on this machine only (default ${default}); port 0 takes a free one."`
	Dir       string `type:"path" placeholder:"DIR" help:"Show the *.formula.yaml files of this folder; without it, the demo workshop."`
	Workspace string `type:"path" placeholder:"DIR" help:"Keep drafts in this folder; without it, in your own data folder."`
	Open      bool   `help:"Open the page in the browser."`
}

func (serveCommand) Help() string {
	return "The address holds a token, new at each start: who does not have it gets no answer. Ctrl-C ends it." + exitHelp
}

// Run shows the page until it is told to end.
func (c *serveCommand) Run(s *session) (err error) {
	if c.Dir != "" {
		folder, err := folderAt(c.Dir)
		if err != nil {
			return err
		}
		s.Folder = folder
	}
	s.Workspace = c.Workspace
	defer func() { err = errors.Join(err, s.Close()) }()
	if err := s.Program.Open(s); err != nil {
		return err
	}
	if err := s.Listen(c.Addr); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "Levigate at %s\n", s.LaunchURL())
	if c.Open {
		if forget, err := openPage(s.LaunchURL()); err == nil {
			defer forget()
		}
	}
	return s.Program.Run(s)
}

func folderAt(path string) (fs.FS, error) {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		return nil, &levigate.Error{Code: levigate.NotFound, Message: path + " is no folder that can be read", Help: "name the folder that holds your formula files", Cause: err}
	}
	return os.DirFS(path), nil
}
