package memory

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"slices"

	"levigate"
)

// Freeze keeps a version and gives it its number.
func (s *Store) Freeze(ctx context.Context, v *levigate.Version) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, err := s.open(ctx, v.Draft); err != nil {
		return err
	}
	v.Number = 1
	for i := range s.versions {
		if s.versions[i].ID == v.ID {
			return fail(levigate.Conflict, "make another id", "a version with the id %q is there already", v.ID)
		}
		if s.versions[i].Draft == v.Draft {
			v.Number++
		}
	}
	kept := *v
	kept.Document = copied(v.Document)
	s.versions = append(s.versions, kept)
	return nil
}

// Version gives one version.
func (s *Store) Version(ctx context.Context, id string) (*levigate.Version, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	for _, v := range s.versions {
		if v.ID == id {
			v.Document = copied(v.Document)
			return &v, ctx.Err()
		}
	}
	return nil, fail(levigate.NotFound, "the draft lists its versions", "no version has the id %q", id)
}

// VersionsOf lists the versions of a draft in order.
func (s *Store) VersionsOf(ctx context.Context, id string) ([]levigate.Version, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	var out []levigate.Version
	for _, v := range s.versions {
		if v.Draft == id {
			out = append(out, v)
		}
	}
	return out, ctx.Err()
}

// AddRecord gives a record its place in the chain and keeps it.
func (s *Store) AddRecord(ctx context.Context, r *levigate.Record) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if err := ctx.Err(); err != nil {
		return err
	}
	for i := range s.records {
		if s.records[i].ID == r.ID {
			return fail(levigate.Conflict, "make another id", "a record with the id %q is there already", r.ID)
		}
	}
	r.Seq, r.Prev = int64(len(s.records))+1, ""
	if n := len(s.records); n > 0 {
		r.Prev = s.records[n-1].Hash
	}
	r.Hash = hashOf(r)
	kept := *r
	kept.Body = slices.Clone(r.Body)
	s.records = append(s.records, kept)
	return nil
}

// Record gives one record.
func (s *Store) Record(ctx context.Context, id string) (*levigate.Record, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	for _, r := range s.records {
		if r.ID == id {
			return &r, ctx.Err()
		}
	}
	return nil, fail(levigate.NotFound, "the subject lists its records", "no record has the id %q", id)
}

// RecordsOf lists the records of a subject in order.
func (s *Store) RecordsOf(ctx context.Context, subject levigate.Subject) ([]levigate.Record, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	var out []levigate.Record
	for _, r := range s.records {
		if r.Subject == subject {
			out = append(out, r)
		}
	}
	return out, ctx.Err()
}

// Verify walks the chain.
func (s *Store) Verify(ctx context.Context) ([]levigate.Fault, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	var out []levigate.Fault
	prev := ""
	for i := range s.records {
		r := &s.records[i]
		switch {
		case r.Prev != prev:
			out = append(out, levigate.Fault{Seq: r.Seq, Record: r.ID, Text: "does not follow the record before it: one was removed or put in"})
		case r.Hash != hashOf(r):
			out = append(out, levigate.Fault{Seq: r.Seq, Record: r.ID, Text: "was edited after it was kept"})
		}
		prev = r.Hash
	}
	return out, ctx.Err()
}

// hashOf covers everything a record says and the hash of the one before.
func hashOf(r *levigate.Record) string {
	c := *r
	c.Hash = ""
	b, err := json.Marshal(c)
	if err != nil {
		panic("memory: a record does not marshal: " + err.Error())
	}
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}
