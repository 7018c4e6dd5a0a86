package formulafile

import (
	"strings"

	"github.com/goccy/go-yaml/token"
)

// Faults that two tokens show by where they stand to one another. The library
// lets them pass; other YAML readers do not, or read something else.

// spaced reports a colon in brackets with nothing after it: YAML readers differ
// on what that means.
func (s *structure) spaced(key, colon, next *token.Token) {
	if key.Position.Line != colon.Position.Line && !strings.Contains(strings.TrimSpace(key.Origin), "\n") {
		s.report(placeOf(colon), "write key: value on one line", "a colon stands on another line than its key")
		return
	}
	touches := next.Position.Line == colon.Position.Line && next.Position.Column == colon.Position.Column+1
	quoted := key.Type == token.DoubleQuoteType || key.Type == token.SingleQuoteType
	ends := next.Type == token.CollectEntryType || next.Type == token.MappingEndType || next.Type == token.SequenceEndType
	if !touches || quoted || ends {
		return
	}
	s.report(placeOf(colon), "write a space after the colon, or put a text that has a colon in quotes", "no space follows the colon after %q", short(key.Value))
}

// keyless reports a colon whose key does not stand on its line.
func (s *structure) keyless(before, colon *token.Token) {
	if strings.Contains(strings.TrimSpace(before.Origin), "\n") && before.Position.Line < colon.Position.Line {
		s.report(placeOf(before), "begin the key below in the same column as the key above; put a text of several lines in quotes", "the text %s runs on into the next line, where a key begins", quote(before.Value))
		return
	}
	s.report(placeOf(colon), "write key: value", "a colon stands here with no key before it")
}

// between reports a comma with nothing before it.
func (s *structure) between(before, comma *token.Token) {
	switch before.Type {
	case token.MappingStartType, token.SequenceStartType, token.CollectEntryType:
		s.report(placeOf(comma), "write what belongs there, or delete the comma", "a comma has nothing before it")
	}
}

// indented reports a value that stands below its key or dash but not further
// in than it.
func (s *structure) indented(key *token.Token, rest token.Tokens) {
	if len(rest) == 0 || rest[0].Position.Line == key.Position.Line || rest[0].Position.Column > key.Position.Column {
		return
	}
	// The next item, or the next key: then there is no value.
	if rest[0].Type == token.SequenceEntryType || len(rest) > 1 && rest[1].Type == token.MappingValueType {
		return
	}
	s.report(placeOf(rest[0]), "write it on the line of its key or dash, or indent it", "%s stands below %s without being indented", quote(rest[0].Value), quote(key.Value))
}
