package formulafile

import (
	"regexp"
	"strings"

	"github.com/goccy/go-yaml/token"
)

// plain reports bare texts that only this library takes for a text; to other
// readers, and to whoever wrote them, they are a key, an item or a fault.
func (r *reader) plain(tokens token.Tokens) {
	const quotes = "put the whole text in quotes"
	brackets := 0
	for i, t := range tokens {
		if r.tooMany() {
			return
		}
		fresh := i == 0 || tokens[i-1].Position.Line < t.Position.Line // first on its line
		switch t.Type {
		case token.MappingStartType, token.SequenceStartType:
			brackets++
		case token.MappingEndType, token.SequenceEndType:
			brackets--
		case token.LiteralType, token.FoldedType:
			if !blockHead.MatchString(t.Value) {
				r.report(placeOf(t), "write | or > alone", "%s is not a way to begin a text of several lines", quote(t.Value))
			}
		}
		if t.Type != token.StringType || t.Value == "" || i > 0 && heads(tokens[i-1]) {
			continue
		}
		s := t.Value
		switch {
		case strings.Contains(s, ": ") || strings.HasSuffix(s, ":"):
			r.report(placeOf(t), "write a comma or begin a line before the next key, or "+quotes, "%s has a colon in it", quote(s))
		case fresh && len(s) > 1 && s[0] == '-' && s[1] != '-':
			r.report(placeOf(t), "write - and a space before an item", "no space follows the dash of %s", quote(s))
		case strings.ContainsAny(s[:1], ",]}%:?"):
			r.report(placeOf(t), quotes, "a text can't begin with %s", s[:1])
		case brackets > 0 && strings.ContainsAny(s, "[]{}"):
			r.report(placeOf(t), "close with the bracket that was opened, or "+quotes, "%s has a bracket in it", quote(s))
		}
	}
}

// heads reports whether a token is the | or > that heads a text of many lines.
func heads(t *token.Token) bool { return t.Type == token.LiteralType || t.Type == token.FoldedType }

// blockHead is | or >, with a mark for the line ends and one for the indent.
var blockHead = regexp.MustCompile(`^[|>]([-+]?[1-9]?|[1-9][-+])$`)
