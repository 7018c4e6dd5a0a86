package validation

import (
	"fmt"

	"levigate/calc/water"
	"levigate/cite"
	"levigate/refdata"
	"levigate/work"
)

var _ = work.Prove(water.MethodPitzer,
	rmsCheck("potassium chloride", "guendouzi2001", 0.0015, func(p refdata.Point) bool { return p.Of("potassium chloride") }),
	rmsCheck("potassium chloride with β0 at the freezing point", "crc-concentrative", 0.0015, func(p refdata.Point) bool { return p.Of("potassium chloride") }),
	rmsCheck("sodium chloride with β0 at the freezing point", "crc-concentrative", 0.0015, func(p refdata.Point) bool { return p.Of("sodium chloride") }),
	rmsCheck("sodium acetate", "crc-concentrative", 0.0005, func(p refdata.Point) bool { return p.Of("sodium acetate") }),
)

var _ = work.Prove(water.MethodDeliquescence, saturatedSalts()...)

// saturatedSalts holds the saturation on file against the recalled table from
// 20 to 40 °C; its temperature coefficient is another table's, so the two may
// part by a little more than the uncertainty printed.
func saturatedSalts() []work.Check {
	t, err := refdata.Open("measured/greenspan1977")
	if err != nil {
		panic("validation: " + err.Error())
	}
	var out []work.Check
	for _, r := range t.Rows {
		salt, celsius := r.Text("salt"), number(r, "celsius")
		out = append(out, work.Check{
			What: fmt.Sprintf("saturated %s at %g °C", salt, celsius),
			Got:  func() float64 { return curve(salt, celsius).Saturation() },
			Want: number(r, "activity"), Tol: 0.004 + number(r, "plus_minus"),
			By: work.FromMemory, From: cite.Ref{Key: t.Card.Source, At: t.Card.At},
		})
	}
	return out
}

func number(r refdata.Row, column string) float64 {
	v, err := r.Number(column)
	if err != nil {
		panic("validation: " + err.Error())
	}
	return v
}
