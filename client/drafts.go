package client

import (
	"context"
	"io"
	"net/url"
	"strconv"

	"levigate"
	"levigate/wire"
)

// Drafts lists drafts whose code or name hold a text.
func (c *Client) Drafts(ctx context.Context, text string, most int) (*wire.DraftList, error) {
	return call[wire.DraftList](ctx, c, "GET", "/api/drafts", url.Values{"text": {text}, "most": {strconv.Itoa(most)}}, nil)
}

// CreateDraft makes a draft of a document.
func (c *Client) CreateDraft(ctx context.Context, id string, d levigate.Document) (*wire.DraftMade, error) {
	d = wire.DocumentOf(d)
	return call[wire.DraftMade](ctx, c, "POST", "/api/drafts", nil, wire.NewDraft{ID: id, Document: &d})
}

// CreateFromFile makes a draft of a formula file's text.
func (c *Client) CreateFromFile(ctx context.Context, id, file string) (*wire.DraftMade, error) {
	return call[wire.DraftMade](ctx, c, "POST", "/api/drafts", nil, wire.NewDraft{ID: id, File: file})
}

// Draft opens a draft with its check.
func (c *Client) Draft(ctx context.Context, id string) (*wire.DraftOpened, error) {
	return call[wire.DraftOpened](ctx, c, "GET", draftPath(id), nil, nil)
}

// DeleteDraft deletes a draft.
func (c *Client) DeleteDraft(ctx context.Context, id string) error {
	res, err := c.send(ctx, "DELETE", draftPath(id), nil, nil)
	if err != nil {
		return err
	}
	return res.Body.Close()
}

// Apply makes an edit.
func (c *Client) Apply(ctx context.Context, draft string, n wire.NewCommand, ask Ask) (*wire.Edited, error) {
	return call[wire.Edited](ctx, c, "POST", draftPath(draft)+"/commands", ask.values(), n)
}

// Undo takes the last command back, as a command of the id given.
func (c *Client) Undo(ctx context.Context, draft, id string) (*wire.Edited, error) {
	return call[wire.Edited](ctx, c, "POST", draftPath(draft)+"/undo", nil, wire.NewUndo{ID: id})
}

// Redo makes again what was undone last.
func (c *Client) Redo(ctx context.Context, draft, id string) (*wire.Edited, error) {
	return call[wire.Edited](ctx, c, "POST", draftPath(draft)+"/redo", nil, wire.NewUndo{ID: id})
}

// CommandsAfter lists what was applied after a revision.
func (c *Client) CommandsAfter(ctx context.Context, draft string, revision int64) (*wire.CommandList, error) {
	return call[wire.CommandList](ctx, c, "GET", draftPath(draft)+"/commands", url.Values{"after": {strconv.FormatInt(revision, 10)}}, nil)
}

// Check checks a draft.
func (c *Client) Check(ctx context.Context, draft string, ask Ask) (*wire.Check, error) {
	return call[wire.Check](ctx, c, "GET", draftPath(draft)+"/check", ask.values(), nil)
}

// Assess checks a document that is not kept.
func (c *Client) Assess(ctx context.Context, d levigate.Document, ask Ask) (*wire.Check, error) {
	return call[wire.Check](ctx, c, "POST", "/api/assess", ask.values(), map[string]any{"document": wire.DocumentOf(d)})
}

// File is a draft as a formula file.
func (c *Client) File(ctx context.Context, draft string) ([]byte, error) {
	res, err := c.send(ctx, "GET", draftPath(draft)+"/file", nil, nil)
	if err != nil {
		return nil, err
	}
	defer res.Body.Close()
	return io.ReadAll(io.LimitReader(res.Body, mostAnswer))
}
