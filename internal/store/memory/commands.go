package memory

import (
	"context"
	"slices"

	"levigate"
)

// Apply applies a command once.
func (s *Store) Apply(ctx context.Context, c *levigate.Command) (*levigate.Applied, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	d, err := s.open(ctx, c.Draft)
	if err != nil {
		return nil, err
	}
	if a, err := d.again(c.ID); a != nil || err != nil {
		return a, err
	}
	a, err := s.apply(d, *c)
	if err != nil {
		return nil, err
	}
	d.done, d.undone = append(d.done, len(d.log)-1), nil
	return a, nil
}

// Undo applies the inverse of the last command that is not undone.
func (s *Store) Undo(ctx context.Context, id, commandID, by string) (*levigate.Applied, error) {
	return s.step(ctx, id, commandID, by, func(d *draft) (from, to *[]int) { return &d.done, &d.undone })
}

// Redo applies again what was undone last.
func (s *Store) Redo(ctx context.Context, id, commandID, by string) (*levigate.Applied, error) {
	return s.step(ctx, id, commandID, by, func(d *draft) (from, to *[]int) { return &d.undone, &d.done })
}

// step takes the inverse of the last command of one list and puts what it was
// applied as on the other.
func (s *Store) step(ctx context.Context, id, commandID, by string, lists func(*draft) (from, to *[]int)) (*levigate.Applied, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	d, err := s.open(ctx, id)
	if err != nil {
		return nil, err
	}
	if a, err := d.again(commandID); a != nil || err != nil {
		return a, err
	}
	from, to := lists(d)
	if len(*from) == 0 {
		return nil, nil
	}
	last := &d.log[(*from)[len(*from)-1]]
	a, err := s.apply(d, levigate.Command{ID: commandID, Draft: id, Base: d.Revision, Label: last.Command.Label,
		Changes: slices.Clone(last.Inverse), Undoes: last.Command.ID, By: by})
	if err != nil {
		return nil, err
	}
	*from = (*from)[:len(*from)-1]
	*to = append(*to, len(d.log)-1)
	return a, nil
}

func (s *Store) apply(d *draft, c levigate.Command) (*levigate.Applied, error) {
	c.At = s.Clock()
	inverse, clashes, err := d.Document.Apply(&c)
	if err != nil {
		return nil, err
	}
	if len(clashes) > 0 {
		return nil, &levigate.ClashError{Draft: d.ID, Revision: d.Revision, Clashes: clashes}
	}
	d.Revision++
	d.Changed = c.At
	d.log = append(d.log, levigate.Applied{Revision: d.Revision, Command: c, Inverse: inverse})
	out := d.log[len(d.log)-1]
	return &out, nil
}

// again finds a command that was applied before. A command needs an id, or it
// could not be told from another.
func (d *draft) again(id string) (*levigate.Applied, error) {
	if id == "" {
		return nil, fail(levigate.Invalid, "the page makes one for every edit; reload it", "a command has no id")
	}
	for i := range d.log {
		if d.log[i].Command.ID == id {
			out := d.log[i]
			out.Again = true
			return &out, nil
		}
	}
	return nil, nil
}

// CommandsAfter lists what was applied after a revision.
func (s *Store) CommandsAfter(ctx context.Context, id string, revision int64) ([]levigate.Applied, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	d, err := s.open(ctx, id)
	if err != nil {
		return nil, err
	}
	return slices.Clone(d.log[min(max(int(revision), 0), len(d.log)):]), nil
}
