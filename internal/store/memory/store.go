package memory

import (
	"context"
	"fmt"
	"sync"
	"time"

	"levigate"
)

// Store keeps a workspace in memory.
type Store struct {
	Clock func() time.Time

	mu       sync.RWMutex
	drafts   map[string]*draft
	versions []levigate.Version
	records  []levigate.Record
}

var _ levigate.Store = (*Store)(nil)

// New is an empty store.
func New() *Store { return &Store{Clock: time.Now, drafts: map[string]*draft{}} }

// Close has nothing to end.
func (s *Store) Close() error { return nil }

func fail(code levigate.Code, help, format string, args ...any) error {
	return &levigate.Error{Code: code, Message: fmt.Sprintf(format, args...), Help: help}
}

// open gives the draft that stands under an id.
func (s *Store) open(ctx context.Context, id string) (*draft, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	d := s.drafts[id]
	if d == nil {
		return nil, fail(levigate.NotFound, "the list of drafts names those there are", "no draft has the id %q", id)
	}
	return d, nil
}
