package formulafile

import (
	"github.com/goccy/go-yaml/scanner"
	"github.com/goccy/go-yaml/token"

	"levigate"
)

// tokens cuts the text and checks the tokens while nothing has been built from
// them: no anchor is ever followed, no depth ever recursed into.
func (r *reader) tokens(text string) token.Tokens {
	all, broken := scan(text)
	var kept token.Tokens
	for _, t := range all {
		if t.Type != token.CommentType {
			kept = append(kept, t)
		}
	}
	relocate(text, kept)
	r.refuseParts(kept)
	r.plain(kept)
	r.escapes(text, kept)
	// Where the cut itself failed the rest is missing, so brackets look open.
	if broken != nil {
		if !r.failed() {
			r.syntax(placeOf(broken), broken.Error, broken)
		}
		return nil
	}
	if len(kept) == 0 {
		what := "the file is empty"
		if len(all) > 0 {
			what = "the file holds only comments"
		}
		r.report(levigate.Place{}, "begin with levigate: "+Edition+" and the formula's code, name, product and lines", "%s", what)
		return nil
	}
	kept = r.oneDocument(kept)
	r.structure(kept)
	return kept
}

// scan cuts the text into tokens and stops at the first that can't be one. The
// library's own loop goes on after a fault, and need not come to an end.
func scan(text string) (all token.Tokens, broken *token.Token) {
	var s scanner.Scanner
	s.Init(text)
	for {
		part, err := s.Scan()
		for _, t := range part {
			if t.Type == token.InvalidType {
				return all, t
			}
			all.Add(t)
		}
		// Either the end, or a fault that left no token.
		if err != nil {
			return all, nil
		}
	}
}

// refuseParts reports the parts of YAML that a formula has no use for.
func (r *reader) refuseParts(tokens token.Tokens) {
	const quotes = "if it belongs to a text, put the text in quotes"
	for _, t := range tokens {
		if r.tooMany() {
			return
		}
		at := placeOf(t)
		switch t.Type {
		case token.AnchorType:
			r.report(at, quotes+"; otherwise delete the & with its name", "& begins an anchor; a formula file has none")
		case token.AliasType:
			r.report(at, quotes+"; otherwise write out what the * refers to", "* refers to an anchor; a formula file has none")
		case token.TagType:
			r.report(at, quotes+"; otherwise delete the ! with its word", "! begins a tag; a formula file has none")
		case token.MergeKeyType:
			r.report(at, "write the keys out", "<< merges another group; a formula file has no such key")
		case token.MappingKeyType:
			r.report(at, "write key: value", "a key is written with a question mark")
		case token.DirectiveType:
			if at.Column > 1 {
				r.report(at, "put the whole text in quotes", "a text can't begin with %%")
				continue
			}
			r.report(at, "delete the line; if it belongs to a text, put the text in quotes", "%% begins a YAML directive; a formula file has none")
		}
	}
}

// oneDocument takes off a marker at the very beginning or end, which some
// programs write, and reports any other.
func (r *reader) oneDocument(tokens token.Tokens) token.Tokens {
	// A directive was reported; the marker that must follow it is not a fault.
	for first := tokens[0]; first.Type == token.DirectiveType && len(tokens) > 0 && tokens[0].Position.Line == first.Position.Line; {
		tokens = tokens[1:]
	}
	if len(tokens) > 0 && tokens[0].Type == token.DocumentHeaderType {
		tokens = tokens[1:]
	}
	if n := len(tokens); n > 0 && tokens[n-1].Type == token.DocumentEndType {
		tokens = tokens[:n-1]
	}
	for _, t := range tokens {
		if t.Type == token.DocumentHeaderType || t.Type == token.DocumentEndType {
			r.report(placeOf(t), "keep one formula to a file", "%s begins another document", t.Value)
		}
	}
	if len(tokens) == 0 {
		r.report(levigate.Place{}, "begin with levigate: "+Edition, "the file is empty")
	}
	return tokens
}

func placeOf(t *token.Token) levigate.Place {
	if t == nil || t.Position == nil {
		return levigate.Place{}
	}
	return levigate.Place{Line: t.Position.Line, Column: t.Position.Column}
}
