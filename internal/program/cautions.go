package program

import (
	"strings"

	"levigate"
	"levigate/rules"
)

// Cautions is what a person must know beside the figures, once and plainly: the
// general ones always, the others where a raw material calls for them. Dust is
// a finding of its own.
func Cautions(a *levigate.Assessment) string {
	said := []string{
		"These are estimates: they screen, they never release a product.",
		"Growth limits do not cover every organism, and low activity stops growth without killing.",
		"Whether a product may be sold is for a qualified assessor, the law in force where it is sold, and a laboratory's challenge and stability tests.",
	}
	return strings.Join(append(said, handling(a.Formula)...), " ")
}

// BenchCautions is what a person must know at the balance: those of Cautions
// that raw materials call for, and what the formula check says of dust.
func BenchCautions(f *levigate.Formula) []string {
	var said []string
	for _, d := range rules.JudgeBy(&levigate.Assessment{Formula: f}, "M01") {
		said = append(said, d.Text+" "+strings.ToUpper(d.Help[:1])+d.Help[1:]+".")
	}
	return append(said, handling(f)...)
}

// handling is what raw materials call for where they are handled.
func handling(f *levigate.Formula) []string {
	warned := map[string]bool{}
	for i := range f.Lines {
		if m := f.Lines[i].Match.Material; m != nil {
			for _, c := range m.Cautions {
				warned[c] = true
			}
		}
	}
	var said []string
	for _, c := range []struct{ caution, text string }{
		{"caustic", "Caustics burn: gloves and goggles."},
		{"acid", "Strong acids burn: gloves and goggles."},
		{"hot-wax", "Hot wax burns; keep water away from it and from mains stirrers."},
		{"flammable", "Flammable liquids: no flame, no hot-air gun, no heat-seal jaw beside them."},
	} {
		if warned[c.caution] {
			said = append(said, c.text)
		}
	}
	return said
}
