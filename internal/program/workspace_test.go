package program

import (
	"errors"
	"path/filepath"
	"testing"
)

func TestDataDir(t *testing.T) {
	home := func() (string, error) { return filepath.FromSlash("/home/mara"), nil }
	nobody := func() (string, error) { return "", errors.New("no home") }
	for name, c := range map[string]struct {
		system string
		env    map[string]string
		home   func() (string, error)
		want   string
	}{
		"linux":               {"linux", nil, home, "/home/mara/.local/share"},
		"another place":       {"linux", map[string]string{"XDG_DATA_HOME": "/data"}, home, "/data"},
		"a place that is not": {"linux", map[string]string{"XDG_DATA_HOME": "data"}, home, "/home/mara/.local/share"},
		"mac":                 {"darwin", map[string]string{"XDG_DATA_HOME": "/data"}, home, "/home/mara/Library/Application Support"},
		"windows":             {"windows", map[string]string{"LocalAppData": "C:/Users/mara/AppData/Local"}, nobody, "C:/Users/mara/AppData/Local"},
		"no home":             {"linux", nil, nobody, ""},
		"windows, none":       {"windows", nil, home, ""},
	} {
		got, err := dataDir(c.system, func(k string) string { return c.env[k] }, c.home)
		if (err != nil) != (c.want == "") || err == nil && filepath.ToSlash(got) != c.want {
			t.Errorf("%s: %s, %v; want %s", name, got, err, c.want)
		}
	}
}
