package memory

import (
	"cmp"
	"context"
	"encoding/json"
	"slices"
	"strings"
	"unicode"

	"levigate"
)

// draft is one draft with the commands that made it.
type draft struct {
	levigate.Draft
	log []levigate.Applied
	// done are the places in the log that undo walks back over, undone those that
	// redo walks forward over; both hold the command whose inverse is applied next.
	done, undone []int
}

// CreateDraft keeps a new draft at revision 0.
func (s *Store) CreateDraft(ctx context.Context, d *levigate.Draft) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if err := ctx.Err(); err != nil {
		return err
	}
	if s.drafts[d.ID] != nil {
		return fail(levigate.Conflict, "make another id", "a draft with the id %q is there already", d.ID)
	}
	now := s.Clock()
	d.Revision, d.Created, d.Changed = 0, now, now
	kept := *d
	kept.Document = copied(d.Document)
	s.drafts[d.ID] = &draft{Draft: kept}
	return nil
}

// Draft gives a draft that nobody else writes to.
func (s *Store) Draft(ctx context.Context, id string) (*levigate.Draft, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	d, err := s.open(ctx, id)
	if err != nil {
		return nil, err
	}
	// Apply makes a document anew and never writes to the old one.
	out := d.Draft
	return &out, nil
}

// ListDrafts lists those whose code or name hold the text.
func (s *Store) ListDrafts(ctx context.Context, text string, most int) ([]levigate.DraftInfo, error) {
	s.mu.RLock()
	defer s.mu.RUnlock()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	out := []levigate.DraftInfo{}
	for _, d := range s.drafts {
		h := d.Document.Head
		if strings.Contains(folded(h["code"]+"\n"+h["name"]), folded(text)) {
			out = append(out, levigate.DraftInfo{ID: d.ID, Code: h["code"], Name: h["name"], Product: h["product"], Revision: d.Revision, Changed: d.Changed})
		}
	}
	slices.SortFunc(out, func(a, b levigate.DraftInfo) int {
		return cmp.Or(b.Changed.Compare(a.Changed), cmp.Compare(a.ID, b.ID))
	})
	return out[:min(len(out), max(most, 0))], nil
}

// DeleteDraft forgets a draft and its commands.
func (s *Store) DeleteDraft(ctx context.Context, id string) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	_, err := s.open(ctx, id)
	if err == nil {
		delete(s.drafts, id)
	}
	return err
}

// copied is a document that shares nothing with the one given.
func copied(d levigate.Document) (out levigate.Document) {
	b, err := json.Marshal(d)
	if err == nil {
		err = json.Unmarshal(b, &out)
	}
	if err != nil {
		panic("memory: a document does not come through JSON: " + err.Error())
	}
	return out
}

// folded is a text without case and without the accents of Latin letters.
func folded(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		if to, ok := plain[unicode.ToLower(r)]; ok {
			return to
		}
		return unicode.ToLower(r)
	}, s)
}

var plain = func() map[rune]rune {
	out := map[rune]rune{}
	for to, from := range map[rune]string{'a': "àáâãäåā", 'c': "çčć", 'e': "èéêëēěę", 'i': "ìíîïī", 'l': "ł", 'n': "ñńň", 'o': "òóôõöøō", 's': "śšş", 'u': "ùúûüūů", 'y': "ýÿ", 'z': "źžż"} {
		for _, r := range from {
			out[r] = to
		}
	}
	return out
}()
