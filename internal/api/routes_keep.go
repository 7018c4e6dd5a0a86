package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"levigate/wire"
)

func (s *Server) keepRoutes(a huma.API) {
	on(s, a, route{"freeze", "POST", "/api/drafts/{id}/versions", "Freeze a draft as a version, with a reason", http.StatusCreated},
		func(ctx context.Context, in *struct {
			DraftPath
			Body wire.NewVersion
		}) (*wire.VersionMade, error) {
			v, err := s.config.Bench.Freeze(ctx, in.ID, &in.Body)
			if err != nil {
				return nil, err
			}
			return &wire.VersionMade{Version: *v}, nil
		})
	on(s, a, route{"list-versions", "GET", "/api/drafts/{id}/versions", "List the versions of a draft", 0},
		func(ctx context.Context, in *DraftPath) (*wire.VersionList, error) {
			out, err := s.config.Bench.Versions(ctx, in.ID)
			return &out, err
		})
	on(s, a, route{"open-version", "GET", "/api/versions/{id}", "Open a version as it was kept", 0},
		func(ctx context.Context, in *struct {
			ID string `path:"id" doc:"The version"`
		}) (*wire.VersionOpened, error) {
			v, err := s.config.Bench.Version(ctx, in.ID)
			if err != nil {
				return nil, err
			}
			return &wire.VersionOpened{Version: *v}, nil
		})
	on(s, a, route{"add-reading", "POST", "/api/readings", "Keep a reading; it is in force in later checks of its subject", http.StatusCreated},
		func(ctx context.Context, in *struct{ Body wire.NewReading }) (*wire.ReadingMade, error) {
			r, err := s.config.Bench.AddReading(ctx, &in.Body)
			if err != nil {
				return nil, err
			}
			return &wire.ReadingMade{Record: *r}, nil
		})
	on(s, a, route{"list-readings", "GET", "/api/readings", "List the readings of a subject", 0},
		func(ctx context.Context, in *struct {
			Kind string `query:"kind" required:"true" enum:"material,lot,version,batch,pack,balance,stirrer"`
			Key  string `query:"key" required:"true" maxLength:"200"`
		}) (*wire.ReadingList, error) {
			out, err := s.config.Bench.Readings(ctx, in.Kind, in.Key)
			return &out, err
		})
}
