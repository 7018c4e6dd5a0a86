package refdata

import (
	"fmt"
	"strings"

	"levigate/cite"
)

// Card says what a table is and where it comes from.
type Card struct {
	Title   string
	Source  string // a key of the bibliography
	At      string // table, page or equation in it
	Units   string // as printed
	Keyed   string // who keyed it, when, and whether a second keying was made
	Licence string
	Mark    cite.Mark
	Notes   string
}

// parseCard reads "# key: value" lines; a line whose text is indented goes on
// with the value before it.
func parseCard(name string, lines []string) (Card, error) {
	fields := map[string]string{}
	last := ""
	for i, line := range lines {
		line = strings.TrimPrefix(strings.TrimPrefix(line, "#"), " ")
		switch {
		case strings.TrimSpace(line) == "":
		case strings.HasPrefix(line, "  ") && last != "":
			fields[last] += " " + strings.TrimSpace(line)
		default:
			k, v, ok := strings.Cut(line, ":")
			if !ok {
				return Card{}, fmt.Errorf("%s:%d: want \"key: value\"", name, i+1)
			}
			last = strings.TrimSpace(k)
			if _, known := cardKeys[last]; !known {
				return Card{}, fmt.Errorf("%s:%d: %q is not a card's key", name, i+1, last)
			}
			fields[last] = strings.TrimSpace(v)
		}
	}
	for key, needed := range cardKeys {
		if needed && fields[key] == "" {
			return Card{}, fmt.Errorf("%s: a card needs %s", name, key)
		}
	}
	mark, err := cite.ParseMark(fields["mark"])
	if err != nil {
		return Card{}, fmt.Errorf("%s: %w", name, err)
	}
	if _, ok := cite.Find(fields["source"]); !ok {
		return Card{}, fmt.Errorf("%s: source %q is not in the bibliography", name, fields["source"])
	}
	return Card{
		Title: fields["title"], Source: fields["source"], At: fields["at"], Units: fields["units"],
		Keyed: fields["keyed"], Licence: fields["licence"], Mark: mark, Notes: fields["notes"],
	}, nil
}

// cardKeys lists a card's keys, and which a card may not lack.
var cardKeys = map[string]bool{
	"title": true, "source": true, "at": false, "units": true, "keyed": true, "licence": true, "mark": true, "notes": false,
}
