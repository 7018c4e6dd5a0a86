package main

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// benchDir holds the sources of the bench in the browser.
const benchDir = "ui/bench"

// oldestNode is the first Node that Vite runs on, as major and minor.
var oldestNode = [2]int{20, 19}

// errNoNode is why the bench cannot be built here. It is told apart from a
// build that fails: the program is whole without its bench.
type errNoNode string

func (e errNoNode) Error() string {
	return fmt.Sprintf("%s; install Node %d.%d or newer with npm from the system's packages or nodejs.org", string(e), oldestNode[0], oldestNode[1])
}

// findNode looks for a Node and an npm that can build the bench, and gives the
// version it found.
func findNode(ctx context.Context) (string, error) {
	for _, name := range []string{"node", "npm"} {
		if _, err := exec.LookPath(name); err != nil {
			return "", errNoNode(name + " is not on the path")
		}
	}
	said, err := exec.CommandContext(ctx, "node", "--version").Output()
	if err != nil {
		return "", errNoNode(fmt.Sprintf("node --version: %v", err))
	}
	version := strings.TrimSpace(string(said))
	if !newEnough(version) {
		return "", errNoNode("Node " + version + " is too old")
	}
	return version, nil
}

// newEnough reads what node --version prints, v20.19.3.
func newEnough(version string) bool {
	parts := strings.SplitN(strings.TrimPrefix(version, "v"), ".", 3)
	if len(parts) < 2 {
		return false
	}
	major, err1 := strconv.Atoi(parts[0])
	minor, err2 := strconv.Atoi(parts[1])
	if errors.Join(err1, err2) != nil {
		return false
	}
	return major > oldestNode[0] || major == oldestNode[0] && minor >= oldestNode[1]
}

// npm runs npm in the bench's folder; env is added to the environment.
func (p place) npm(ctx context.Context, env []string, args ...string) error {
	c := p.program(ctx, "npm", args...)
	c.Dir = filepath.Join(p.root, filepath.FromSlash(benchDir))
	c.Env = append(c.Environ(), env...)
	return c.Run()
}
