package api

import (
	"context"
	"errors"
	"net/http"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"levigate"
	"levigate/wire"
)

// huma keeps how it refuses in variables of its own; nobody else here uses it.
func init() {
	huma.DefaultArrayNullable = false
	huma.NewError = refusalOf
}

// refusalOf words what huma found wrong with a request before it came to us.
// What was sent is not repeated: it may be a formula.
func refusalOf(status int, message string, errs ...error) huma.StatusError {
	out := &wire.Refusal{Status: http.StatusBadRequest, Code: string(levigate.Invalid), Message: "the request " + message, Help: "GET /api/openapi.json says what this address takes"}
	switch {
	case status == http.StatusRequestEntityTooLarge:
		out.Message, out.Help = "the request is larger than 1 MiB", "send less at once"
	case status == http.StatusUnsupportedMediaType:
		out.Message = "the request is not in JSON"
	case status >= http.StatusInternalServerError:
		out.Status, out.Code, out.Message, out.Help = http.StatusInternalServerError, string(levigate.Internal), ourFault, "try again; what was saved is kept"
	case len(errs) > 0:
		said := []string{}
		for _, err := range errs[:min(len(errs), 3)] {
			var d *huma.ErrorDetail
			if errors.As(err, &d) {
				said = append(said, strings.TrimPrefix(d.Location+": "+d.Message, ": "))
			}
		}
		out.Message = "the request cannot be taken: " + strings.Join(said, "; ")
	}
	return out
}

const ourFault = "something went wrong here; that is our fault"

// refused turns an error of the bench into an answer.
func (s *Server) refused(ctx context.Context, operation string, err error) error {
	if clash, ok := errors.AsType[*levigate.ClashError](err); ok {
		return &wire.Refusal{Status: http.StatusConflict, Code: string(levigate.Conflict), Message: clash.Error(),
			Help: "look at both values and choose", Clashes: clash.Clashes, Revision: clash.Revision}
	}
	code := levigate.CodeOf(err)
	out := &wire.Refusal{Status: statuses[code], Code: string(code), Message: err.Error()}
	if e, ok := errors.AsType[*levigate.Error](err); ok {
		out.Help = e.Help
	}
	if code == levigate.Internal {
		if ctx.Err() == nil { // a reader who left is no fault
			s.config.Log.Printf("%s: %v", operation, err)
		}
		// One that says what to do was worded for her: a full disk is not our fault.
		if out.Help == "" {
			out.Message, out.Help = ourFault, "try again; what was saved is kept"
		}
	}
	return out
}
