package main

import (
	"bytes"
	"encoding/json"
	"io"

	"levigate"
	"levigate/internal/program"
)

// printJSON prints one object for one file and an array for more.
func printJSON(s *session, outcomes []program.Outcome) error {
	if len(outcomes) == 1 {
		return encode(s, s.Wire(&outcomes[0]))
	}
	all := make([]any, len(outcomes))
	for i := range outcomes {
		all[i] = s.Wire(&outcomes[i])
	}
	return encode(s, all)
}

func encode(s *session, v any) error { return encodeTo(s.out, v) }

func encodeTo(out io.Writer, v any) error {
	// Written whole or not at all: half an answer must not look like one.
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return &levigate.Error{Code: levigate.Internal, Message: "the answer is no JSON: " + err.Error(), Cause: err}
	}
	_, err := out.Write(b.Bytes())
	return err
}
