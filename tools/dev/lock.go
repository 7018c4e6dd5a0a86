package main

import (
	"fmt"
	"os"
	"regexp"
	"strings"
)

// A lock with hosts in it installs only where those hosts are reached, and
// tells where it was made. npm writes none with the line in ui/bench/.npmrc;
// these find one that was written without.
var hosts = regexp.MustCompile(`"resolved"|"(?:https?|git|git\+[a-z]+|file):[^"]*"`)

// A package may say who would like to be paid; that is an address, of nothing
// that is fetched.
var funding = regexp.MustCompile(`(?s)"funding": (?:"[^"]*"|\{[^}]*\}|\[[^\]]*\])`)

func lockIsOpen(path string) error {
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if found := lockHosts(string(text)); found != nil {
		return fmt.Errorf("%s names places to fetch from: %s\n  make it again in that folder: rm package-lock.json; npm install --package-lock-only", path, strings.Join(found, ", "))
	}
	return nil
}

func lockHosts(lock string) []string {
	return hosts.FindAllString(funding.ReplaceAllString(lock, ""), 3)
}
