package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
)

// browsers are the names under which systems install Chromium. Chrome of a
// desktop serves as well.
var browsers = []string{
	"chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome", "msedge",
	"/Applications/Chromium.app/Contents/MacOS/Chromium",
	"/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
}

// chromiumVar names a browser by hand where it is none of those.
const chromiumVar = "LEVIGATE_CHROMIUM"

func findChromium(look func(string) (string, error)) (string, bool) {
	for _, name := range append([]string{os.Getenv(chromiumVar)}, browsers...) {
		if name == "" {
			continue
		}
		if at, err := look(name); err == nil {
			return at, true
		}
	}
	return "", false
}

// chromium gives the browser for the tests. Where it is missing and this is the
// administrator of a Debian machine, as on a build machine, it is installed;
// elsewhere nobody's system is changed. A test run without a browser fails.
func (p place) chromium(ctx context.Context) (string, error) {
	if at, ok := findChromium(exec.LookPath); ok {
		return at, nil
	}
	apt, err := exec.LookPath("apt-get")
	if err != nil || os.Geteuid() != 0 {
		return "", errors.New("the browser tests need Chromium, and it is not on the path; install it (Debian: apt-get install chromium), or name a browser in " + chromiumVar)
	}
	fmt.Fprintln(p.log, "-- Chromium is missing; installing it with apt-get")
	// One after the other: an update beside an install can take away what the
	// install has fetched.
	for _, args := range [][]string{
		{"-qq", "update"},
		{"-qq", "-y", "install", "--no-install-recommends", "chromium"},
	} {
		c := p.program(ctx, apt, args...)
		c.Env = append(c.Environ(), "DEBIAN_FRONTEND=noninteractive")
		c.Stdout = p.log
		if err := c.Run(); err != nil {
			return "", fmt.Errorf("apt-get %v: %w", args, err)
		}
	}
	if at, ok := findChromium(exec.LookPath); ok {
		return at, nil
	}
	return "", errors.New("apt-get installed chromium, and it is still not on the path")
}
