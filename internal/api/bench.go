package api

import (
	"context"

	"levigate"
	"levigate/wire"
)

// Ask is what a check is asked for beside the formula.
type Ask struct {
	Temperature *float64 // °C; nil for what the formula says, or the room
	Working     string   // the figure whose working is wanted
	Curves      bool
}

// Bench is where formulas are written, checked and kept. Errors carry a code.
type Bench interface {
	Drafts(ctx context.Context, text string, most int) (wire.DraftList, error)
	CreateDraft(ctx context.Context, n *wire.NewDraft) (*wire.Draft, error)
	Draft(ctx context.Context, id string) (*wire.DraftOpened, error)
	DeleteDraft(ctx context.Context, id string) error
	// Apply, Undo and Redo answer with the check of the draft as it then is.
	Apply(ctx context.Context, c *levigate.Command, ask Ask) (*wire.Edited, error)
	Undo(ctx context.Context, draft, id, by string, ask Ask) (*wire.Edited, error)
	Redo(ctx context.Context, draft, id, by string, ask Ask) (*wire.Edited, error)
	CommandsAfter(ctx context.Context, draft string, revision int64) (wire.CommandList, error)
	Check(ctx context.Context, draft string, ask Ask) (*wire.Check, error)
	// CheckJSON checks a formula that is not kept.
	CheckJSON(ctx context.Context, body []byte, ask Ask) (*wire.Check, error)
	// FormulaFile is a draft as a formula file, and the name to save it under.
	FormulaFile(ctx context.Context, draft string) (name string, data []byte, err error)
	Materials(ctx context.Context, text string, most int) (wire.MaterialList, error)
	Explain(ctx context.Context, id string) (*wire.Explanation, error)
	Freeze(ctx context.Context, draft string, n *wire.NewVersion) (*wire.VersionInfo, error)
	Versions(ctx context.Context, draft string) (wire.VersionList, error)
	Version(ctx context.Context, id string) (*wire.Version, error)
	AddReading(ctx context.Context, n *wire.NewReading) (*wire.ReadingKept, error)
	Readings(ctx context.Context, kind, key string) (wire.ReadingList, error)
}
