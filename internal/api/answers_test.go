package api

import (
	"errors"
	"io"
	"log"
	"testing"

	"levigate"
	"levigate/wire"
)

// A fault of ours stays inside; one that says what to do is told, or the page
// could only say that nothing was kept.
func TestFaultsThatHelp(t *testing.T) {
	s := &Server{config: Config{Log: log.New(io.Discard, "", 0)}}
	for _, c := range []struct {
		err        error
		said, help string
	}{
		{errors.New("secret/path: disk"), ourFault, "try again; what was saved is kept"},
		{&levigate.Error{Code: levigate.Internal, Message: "keeping the formula failed", Cause: errors.New("secret")}, ourFault, "try again; what was saved is kept"},
		{&levigate.Error{Code: levigate.Internal, Message: "there is no room on the disk", Help: "make room", Cause: errors.New("secret")}, "there is no room on the disk", "make room"},
	} {
		got, ok := errors.AsType[*wire.Refusal](s.refused(t.Context(), "test", c.err))
		if !ok || got.Status != 500 || got.Message != c.said || got.Help != c.help {
			t.Errorf("%v: %+v", c.err, got)
		}
	}
}
