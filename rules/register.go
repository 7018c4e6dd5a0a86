package rules

import (
	"fmt"
	"slices"
	"strings"
)

var registered = map[string]*Rule{}

// register admits a rule. A number used twice, or one that was retired, is a
// programmer's slip and ends the program at its start.
func register(r Rule) *Rule {
	if err := admit(registered, retired, &r); err != nil {
		panic("rules: " + err.Error())
	}
	return &r
}

func admit(set map[string]*Rule, gone map[string]string, r *Rule) error {
	if old, twice := set[r.ID]; twice {
		return fmt.Errorf("%s is taken by %s and cannot be %s too", r.ID, old.Name, r.Name)
	}
	if why, was := gone[r.ID]; was {
		return fmt.Errorf("%s was retired (%s); a number is not used again", r.ID, why)
	}
	set[r.ID] = r
	return nil
}

// All lists the rules in number order.
func All() []*Rule {
	out := make([]*Rule, 0, len(registered))
	for _, r := range registered {
		out = append(out, r)
	}
	slices.SortFunc(out, func(a, b *Rule) int { return strings.Compare(a.ID, b.ID) })
	return out
}

// Find looks a rule up by its number or its name.
func Find(id string) (*Rule, bool) {
	if r, ok := registered[strings.ToUpper(id)]; ok {
		return r, true
	}
	for _, r := range registered {
		if strings.EqualFold(r.Name, id) {
			return r, true
		}
	}
	return nil, false
}
