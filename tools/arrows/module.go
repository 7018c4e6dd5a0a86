package arrows

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// modulePath reads the module's own path from go.mod, the one place where it is
// written, so that a renamed module needs no change here.
func modulePath(dir string) (string, error) {
	text, err := os.ReadFile(filepath.Join(dir, "go.mod"))
	if err != nil {
		return "", err
	}
	for l := range strings.Lines(string(text)) {
		if f := strings.Fields(l); len(f) >= 2 && f[0] == "module" {
			return strings.Trim(f[1], `"`), nil
		}
	}
	return "", fmt.Errorf("%s has no module line", filepath.Join(dir, "go.mod"))
}
