package sqlite

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"strings"
	"unicode/utf8"

	"levigate"
)

// encode writes JSON without the escapes that only a page of HTML needs.
func encode(v any) (string, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return "", err
	}
	return strings.TrimSuffix(b.String(), "\n"), nil
}

func decode[T any](text string) (v T, err error) {
	err = json.Unmarshal([]byte(text), &v)
	return v, err
}

// whole gives a document empty maps and lists in place of missing ones, so that
// a reader meets no null.
func whole(d levigate.Document) levigate.Document {
	if d.Head == nil {
		d.Head = map[string]string{}
	}
	rows := func(in []levigate.Row) []levigate.Row {
		out := make([]levigate.Row, len(in))
		for i, r := range in {
			if out[i] = r; r.Cells == nil {
				out[i].Cells = map[string]string{}
			}
		}
		return out
	}
	d.Lines, d.Making = rows(d.Lines), rows(d.Making)
	return d
}

// digest is by what a command sent again is known: what it does, not where its
// sender stood nor when.
func digest(do string, c *levigate.Command) (string, error) {
	text, err := encode([]any{do, c.Draft, c.Label, c.Changes})
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:]), err
}

const longestID = 64

// validID refuses an id that could not be written in an address or a list.
func validID(what, id string) error {
	ok := id != "" && len(id) <= longestID
	for _, b := range []byte(id) {
		ok = ok && b > ' ' && b < 0x7f
	}
	if ok {
		return nil
	}
	return refused(levigate.Invalid, "make one of letters, digits and hyphens", "the id of a %s has 1 to %d letters, digits or signs, not %.80q", what, longestID, id)
}

// validText refuses what no database would give back as it was.
func validText(what string, texts ...string) error {
	for _, t := range texts {
		if !utf8.ValidString(t) || strings.ContainsRune(t, 0) || len(t) > levigate.MostCell {
			return refused(levigate.Invalid, "send it as text", "%s holds what is no text, or more than %d bytes", what, levigate.MostCell)
		}
	}
	return nil
}

// plain is a head cell as a list shows it.
func plain(cell string) string { return strings.ReplaceAll(cell, "\x00", "") }
