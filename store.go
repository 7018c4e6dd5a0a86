package levigate

import "context"

// Store keeps a workspace. Its methods are safe for use by many at once; each
// is one transaction. Errors carry a Code: NotFound, Invalid, Conflict.
type Store interface {
	Drafts
	Versions
	Records
	// Close ends it; what was acknowledged is on disk before.
	Close() error
}

// Drafts keeps drafts and the commands that made them.
type Drafts interface {
	// CreateDraft keeps a new draft at revision 0. The same ID again is a
	// Conflict.
	CreateDraft(ctx context.Context, d *Draft) error
	Draft(ctx context.Context, id string) (*Draft, error)
	// ListDrafts lists those whose code or name hold the text, case and accents
	// aside, last changed first.
	ListDrafts(ctx context.Context, text string, most int) ([]DraftInfo, error)
	// Apply applies a command once. One that clashes is a *ClashError and changes
	// nothing.
	Apply(ctx context.Context, c *Command) (*Applied, error)
	// CommandsAfter lists what was applied after a revision, in order.
	CommandsAfter(ctx context.Context, draft string, revision int64) ([]Applied, error)
	// Undo applies the inverse of the last command that is not undone, under a new
	// command's ID; Redo applies again the one undone last, unless something else
	// was done since. With nothing to do the answer is nil.
	Undo(ctx context.Context, draft, commandID, by string) (*Applied, error)
	Redo(ctx context.Context, draft, commandID, by string) (*Applied, error)
	DeleteDraft(ctx context.Context, id string) error
}

// Versions keeps frozen versions.
type Versions interface {
	// Freeze keeps a version and gives it its number.
	Freeze(ctx context.Context, v *Version) error
	Version(ctx context.Context, id string) (*Version, error)
	VersionsOf(ctx context.Context, draft string) ([]Version, error)
}

// Records keeps records in one chain of hashes.
type Records interface {
	// AddRecord gives a record its place, Prev and Hash, and keeps it.
	AddRecord(ctx context.Context, r *Record) error
	Record(ctx context.Context, id string) (*Record, error)
	RecordsOf(ctx context.Context, subject Subject) ([]Record, error)
	// Verify walks the chain and names every record edited, removed or put in.
	Verify(ctx context.Context) ([]Fault, error)
}

// ClashError refuses a command, with every cell that stood in its way.
type ClashError struct {
	Draft    string
	Revision int64 // of the draft now
	Clashes  []Clash
}

func (e *ClashError) Error() string { return "someone else has changed the same cells" }
