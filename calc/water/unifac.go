package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// UnifacPolyol gives the water activity of a solution of one alcohol or polyol
// with the mole fraction xw of water at kelvin, from its groups alone.
//
//	ln a = ln xw + ln γ(volumes) + ln γ(group contacts)
//
// The volume part is Flory-Huggins with Staverman's correction; the contact
// part sums over groups, ψ(mn) = exp(−a(mn)/T). The groups of polyols are
// those of Marcolli & Peter 2005, where a carbon that carries an OH counts
// apart. It is used to guess a curve where nothing was measured, never for a
// substance with data: glycerol comes out right, 1,3-propanediol up to 0.05
// and propylene glycol about 0.05 too high, sorbitol up to 0.06 too low.
func UnifacPolyol(xw, kelvin float64, solute Molecule) float64 {
	g, _ := unifac(xw, kelvin, solute)
	return xw * math.Exp(g)
}

// unifac gives ln γ of water and of the solute.
func unifac(xw, kelvin float64, solute Molecule) (lnWater, lnSolute float64) {
	pure := Molecule{WaterGroup: 1}
	m1, m2 := fold(pure), fold(solute)
	c1, c2 := combinatorial(xw, m1, m2)
	mix := groupGammas(xw, kelvin, m1, m2)
	lnWater = c1 + residual(m1, mix, groupGammas(1, kelvin, m1, m2))
	lnSolute = c2 + residual(m2, mix, groupGammas(0, kelvin, m1, m2))
	return lnWater, lnSolute
}

// folded is a molecule by main group: how much surface it has of each, and its
// totals.
type folded struct {
	count   [mains]float64
	surface [mains]float64
	r, q    float64
}

func fold(m Molecule) folded {
	var f folded
	for g, n := range m {
		if n == 0 {
			continue
		}
		s := sizes[g]
		if s.main == volumeOnly {
			panic("water: a group without interactions in a UNIFAC molecule")
		}
		f.count[s.main] += n
		f.surface[s.main] += n * s.q
		f.r += n * s.r
		f.q += n * s.q
	}
	return f
}

// combinatorial is the volume part with the coordination number 10.
func combinatorial(x1 float64, m1, m2 folded) (ln1, ln2 float64) {
	x2 := 1 - x1
	r, q := x1*m1.r+x2*m2.r, x1*m1.q+x2*m2.q
	part := func(m folded) float64 {
		v, t := m.r/r, m.q/q // φ/x and θ/x
		return math.Log(v) + 1 - v - 5*m.q*(math.Log(v/t)+1-v/t)
	}
	return part(m1), part(m2)
}

// groupGammas is ln Γ over Q of each main group in a mixture with x1 of the
// first molecule.
func groupGammas(x1, kelvin float64, m1, m2 folded) (out [mains]float64) {
	var theta [mains]float64
	total := x1*m1.q + (1-x1)*m2.q
	for k := range theta {
		theta[k] = (x1*m1.surface[k] + (1-x1)*m2.surface[k]) / total
	}
	psi := func(m, n int) float64 { return math.Exp(-interactions[m][n] / kelvin) }
	var met [mains]float64 // Σ θm ψ(mk)
	for k := range met {
		for m, t := range theta {
			met[k] += t * psi(m, k)
		}
	}
	for k := range out {
		sum := 0.0
		for m, t := range theta {
			sum += t * psi(k, m) / met[m]
		}
		out[k] = 1 - math.Log(met[k]) - sum
	}
	return out
}

// residual sums a molecule's groups in the mixture less the same in its own
// pure liquid.
func residual(m folded, mix, alone [mains]float64) float64 {
	sum := 0.0
	for k, q := range m.surface {
		sum += q * (mix[k] - alone[k])
	}
	return sum
}

var glycerolGroups = Molecule{CH2WithOH: 2, CHWithOH: 1, OH: 3}

var MethodUnifac = work.Register(&work.Method{
	ID:       "water.unifac-polyol",
	Title:    "Water activity of a polyol solution from its groups",
	Kind:     work.Procedure,
	Text:     "ln a = ln xw + ln γ(volumes) + ln γ(contacts). Volumes: Flory-Huggins with Staverman's correction, from group volumes and surfaces. Contacts: each group's surroundings in the solution against those in its pure liquid, ψ(mn) = exp(−a(mn)/T), with the interactions refitted for alcohols and polyols.",
	Unit:     quantity.One,
	Accuracy: "glycerol within 0.015; up to 0.06 either way for other polyols",
	Sources:  []cite.Ref{{Key: "marcolli2005"}, {Key: "bondi1964"}},
	Checks: []work.Check{
		{What: "pure water", Got: func() float64 { return UnifacPolyol(1, roomKelvin, glycerolGroups) }, Want: 1, Tol: 1e-12, By: work.Law},
		{What: "Gibbs-Duhem balance, glycerol at xw 0.6", Got: func() float64 {
			const h = 1e-5
			w1, s1 := unifac(0.6-h, roomKelvin, glycerolGroups)
			w2, s2 := unifac(0.6+h, roomKelvin, glycerolGroups)
			return (0.6*(w2-w1) + 0.4*(s2-s1)) / (2 * h)
		}, Want: 0, Tol: 1e-7, By: work.Law},
		isopiesticGlycerol(6.8614, 0.87725),
		isopiesticGlycerol(14.572, 0.75564),
	},
})

func isopiesticGlycerol(molality, want float64) work.Check {
	return work.Check{What: "glycerol, isopiestic, " + quantity.Significant(molality, 5) + " mol/kg",
		Got: func() float64 {
			return UnifacPolyol(molesPerKilo/(molesPerKilo+molality), roomKelvin, glycerolGroups)
		}, Want: want, Tol: 0.015, By: work.Published, From: cite.Ref{Key: "scatchard1938"}}
}
