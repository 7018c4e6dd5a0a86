package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humago"

	"levigate/wire"
)

// answer is a body in JSON.
type answer[T any] struct{ Body T }

// route is one operation: its name, where it is, what it does in a line.
type route struct {
	id, method, path, summary string
	status                    int // of a good answer; 0 for the usual
}

// on registers an operation whose answer is a body.
func on[I, T any](s *Server, a huma.API, r route, do func(context.Context, *I) (*T, error)) {
	huma.Register(a, operation(r), func(ctx context.Context, in *I) (*answer[T], error) {
		out, err := do(ctx, in)
		if err != nil {
			return nil, s.refused(ctx, r.id, err)
		}
		return &answer[T]{*out}, nil
	})
}

func operation(r route) huma.Operation {
	return huma.Operation{OperationID: r.id, Method: r.method, Path: r.path, Summary: r.summary, DefaultStatus: r.status, MaxBodyBytes: mostBody}
}

// routes puts the programming interface on a mux.
func (s *Server) routes(mux *http.ServeMux) *huma.OpenAPI {
	config := huma.DefaultConfig("Levigate", "1")
	config.Info.Description = "Drafts, checks, versions and readings of one workspace. Every request carries the launch token, as the cookie " + cookieName + " or as a bearer."
	config.DocsPath, config.OpenAPIPath, config.SchemasPath, config.CreateHooks = "", "", "", nil
	config.Components.SecuritySchemes = map[string]*huma.SecurityScheme{
		"bearer": {Type: "http", Scheme: "bearer"}, "cookie": {Type: "apiKey", In: "cookie", Name: cookieName},
	}
	config.Security = []map[string][]string{{"bearer": {}}, {"cookie": {}}}
	exact(config.Components.Schemas)
	a := humago.New(mux, config)
	s.draftRoutes(a)
	s.checkRoutes(a)
	s.keepRoutes(a)
	describe(a.OpenAPI())
	spec := specification(a.OpenAPI())
	mux.HandleFunc("GET /api/openapi.json", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "application/json")
		w.Write(spec)
	})
	return a.OpenAPI()
}

// Asking is what a check is asked for in the address.
type Asking struct {
	Temperature optional `query:"temperature" doc:"°C the check is made for; left out, what the formula says, or 25"`
}

func (q Asking) ask() Ask {
	var out Ask
	if q.Temperature.set {
		out.Temperature = &q.Temperature.Value
	}
	return out
}

// DraftPath names the draft. It and Asking are exported because huma looks into
// no group that is not.
type DraftPath struct {
	ID string `path:"id" doc:"The draft"`
}

func (s *Server) draftRoutes(a huma.API) {
	on(s, a, route{"list-drafts", "GET", "/api/drafts", "List drafts, the one changed last first", 0},
		func(ctx context.Context, in *struct {
			Text string `query:"text" maxLength:"200" doc:"Part of a code or name"`
			Most int    `query:"most" default:"50" minimum:"1" maximum:"1000"`
		}) (*wire.DraftList, error) {
			out, err := s.config.Bench.Drafts(ctx, in.Text, in.Most)
			return &out, err
		})
	on(s, a, route{"create-draft", "POST", "/api/drafts", "Make a draft of a document or of a formula file", http.StatusCreated},
		func(ctx context.Context, in *struct{ Body wire.NewDraft }) (*wire.DraftMade, error) {
			d, err := s.config.Bench.CreateDraft(ctx, &in.Body)
			if err != nil {
				return nil, err
			}
			s.hub.tell(wire.Event{ID: d.ID, Revision: d.Revision})
			return &wire.DraftMade{Draft: *d}, nil
		})
	on(s, a, route{"open-draft", "GET", "/api/drafts/{id}", "Open a draft with its check", 0},
		func(ctx context.Context, in *DraftPath) (*wire.DraftOpened, error) {
			return s.config.Bench.Draft(ctx, in.ID)
		})
	del := route{"delete-draft", "DELETE", "/api/drafts/{id}", "Delete a draft", http.StatusNoContent}
	huma.Register(a, operation(del), func(ctx context.Context, in *DraftPath) (*struct{}, error) {
		if err := s.config.Bench.DeleteDraft(ctx, in.ID); err != nil {
			return nil, s.refused(ctx, del.id, err)
		}
		return nil, nil
	})
	on(s, a, route{"apply-command", "POST", "/api/drafts/{id}/commands", "Make an edit, once, and check what came of it", 0},
		func(ctx context.Context, in *struct {
			DraftPath
			Asking
			Body wire.NewCommand
		}) (*wire.Edited, error) {
			out, err := s.config.Bench.Apply(ctx, in.Body.Command(in.ID), in.ask())
			return s.told(in.ID, out, err)
		})
	on(s, a, route{"undo", "POST", "/api/drafts/{id}/undo", "Take the last command back", 0},
		func(ctx context.Context, in *stepping) (*wire.Edited, error) {
			out, err := s.config.Bench.Undo(ctx, in.ID, in.Body.ID, in.Body.By, in.ask())
			return s.told(in.ID, out, err)
		})
	on(s, a, route{"redo", "POST", "/api/drafts/{id}/redo", "Make again what was undone last", 0},
		func(ctx context.Context, in *stepping) (*wire.Edited, error) {
			out, err := s.config.Bench.Redo(ctx, in.ID, in.Body.ID, in.Body.By, in.ask())
			return s.told(in.ID, out, err)
		})
	on(s, a, route{"list-commands", "GET", "/api/drafts/{id}/commands", "List the commands applied after a revision", 0},
		func(ctx context.Context, in *struct {
			DraftPath
			After int64 `query:"after" minimum:"0"`
		}) (*wire.CommandList, error) {
			out, err := s.config.Bench.CommandsAfter(ctx, in.ID, in.After)
			return &out, err
		})
}

type stepping struct {
	DraftPath
	Asking
	Body wire.NewUndo
}

// told passes an answer on and tells who listens, once for each command.
func (s *Server) told(draft string, out *wire.Edited, err error) (*wire.Edited, error) {
	if err == nil && out.Command != nil && !out.Again {
		s.hub.tell(wire.Event{ID: draft, Revision: out.Revision, Command: out.Command.ID})
	}
	return out, err
}
