package client

import (
	"context"
	"net/url"
	"strconv"

	"levigate/wire"
)

// Materials finds raw materials by part of a name, best first.
func (c *Client) Materials(ctx context.Context, text string, most int) (*wire.MaterialList, error) {
	return call[wire.MaterialList](ctx, c, "GET", "/api/materials", url.Values{"text": {text}, "most": {strconv.Itoa(most)}}, nil)
}

// Explain says what an id stands for.
func (c *Client) Explain(ctx context.Context, id string) (*wire.Explanation, error) {
	return call[wire.Explanation](ctx, c, "GET", "/api/explain/"+url.PathEscape(id), nil, nil)
}

// Freeze freezes a draft as a version.
func (c *Client) Freeze(ctx context.Context, draft string, n wire.NewVersion) (*wire.VersionMade, error) {
	return call[wire.VersionMade](ctx, c, "POST", draftPath(draft)+"/versions", nil, n)
}

// Versions lists the versions of a draft.
func (c *Client) Versions(ctx context.Context, draft string) (*wire.VersionList, error) {
	return call[wire.VersionList](ctx, c, "GET", draftPath(draft)+"/versions", nil, nil)
}

// Version opens a version as it was kept.
func (c *Client) Version(ctx context.Context, id string) (*wire.VersionOpened, error) {
	return call[wire.VersionOpened](ctx, c, "GET", "/api/versions/"+url.PathEscape(id), nil, nil)
}

// AddReading keeps a reading.
func (c *Client) AddReading(ctx context.Context, n wire.NewReading) (*wire.ReadingMade, error) {
	return call[wire.ReadingMade](ctx, c, "POST", "/api/readings", nil, n)
}

// Readings lists the readings of a subject.
func (c *Client) Readings(ctx context.Context, kind, key string) (*wire.ReadingList, error) {
	return call[wire.ReadingList](ctx, c, "GET", "/api/readings", url.Values{"kind": {kind}, "key": {key}}, nil)
}
