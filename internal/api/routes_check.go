package api

import (
	"context"

	"github.com/danielgtaylor/huma/v2"

	"levigate/wire"
)

func (s *Server) checkRoutes(a huma.API) {
	on(s, a, route{"check-draft", "GET", "/api/drafts/{id}/check", "Check a draft", 0},
		func(ctx context.Context, in *struct {
			DraftPath
			Asking
			Working string `query:"working" maxLength:"100" doc:"A figure whose working is wanted"`
			Curves  bool   `query:"curves" doc:"Draw the curves too"`
		}) (*wire.Check, error) {
			ask := in.ask()
			ask.Working, ask.Curves = in.Working, in.Curves
			return s.config.Bench.Check(ctx, in.ID, ask)
		})
	assess := operation(route{"assess", "POST", "/api/assess", "Check a formula that is not kept, finished or not", 0})
	assess.SkipValidateBody = true // two forms; the bench tells them apart
	huma.Register(a, assess, func(ctx context.Context, in *struct {
		Asking
		RawBody []byte `contentType:"application/json"`
	}) (*answer[wire.Check], error) {
		out, err := s.config.Bench.CheckJSON(ctx, in.RawBody, in.ask())
		if err != nil {
			return nil, s.refused(ctx, assess.OperationID, err)
		}
		return &answer[wire.Check]{*out}, nil
	})
	file := operation(route{"formula-file", "GET", "/api/drafts/{id}/file", "Write a draft as a formula file", 0})
	file.Responses = map[string]*huma.Response{"200": {Description: "The formula file", Content: map[string]*huma.MediaType{
		"application/yaml": {Schema: &huma.Schema{Type: huma.TypeString}}}}}
	huma.Register(a, file, func(ctx context.Context, in *DraftPath) (*download, error) {
		name, data, err := s.config.Bench.FormulaFile(ctx, in.ID)
		if err != nil {
			return nil, s.refused(ctx, file.OperationID, err)
		}
		return &download{Type: "application/yaml; charset=utf-8", Disposition: `attachment; filename="` + name + `"`, Body: data}, nil
	})
	on(s, a, route{"find-materials", "GET", "/api/materials", "Find raw materials by part of a code, name, INCI name or alias, best first", 0},
		func(ctx context.Context, in *struct {
			Text string `query:"text" maxLength:"200"`
			Most int    `query:"most" default:"20" minimum:"1" maximum:"200"`
		}) (*wire.MaterialList, error) {
			out, err := s.config.Bench.Materials(ctx, in.Text, in.Most)
			return &out, err
		})
	on(s, a, route{"explain", "GET", "/api/explain/{id}", "Say what a figure, method, rule, table, substance or raw material is", 0},
		func(ctx context.Context, in *struct {
			ID string `path:"id" maxLength:"200"`
		}) (*wire.Explanation, error) {
			return s.config.Bench.Explain(ctx, in.ID)
		})
}

type download struct {
	Type        string `header:"Content-Type"`
	Disposition string `header:"Content-Disposition"`
	Body        []byte
}
