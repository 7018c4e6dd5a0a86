package wire

import "levigate"

// Contained is one substance as declared.
type Contained struct {
	INCI    string   `json:"inci"`
	Percent *float64 `json:"percent"`
	Low     *float64 `json:"low"`
	High    *float64 `json:"high"`
	Volume  *float64 `json:"volume"` // mL per 100 g; null when no density is on file
	Moles   *float64 `json:"moles"`  // mol per 100 g; null when no molar mass is on file
	From    []int    `json:"from"`   // lines, from 1
}

// Held is one part of what the formula truly holds, g per 100 g.
type Held struct {
	Kind  string   `json:"kind"`
	Name  string   `json:"name"`
	Grams *float64 `json:"grams"`
	Low   *float64 `json:"low"`
	High  *float64 `json:"high"`
	From  []int    `json:"from"` // lines, from 1
}

func containedOf(c *levigate.Contained) Contained {
	return Contained{
		INCI: c.INCI, Percent: share(c.Percent.Typical), Low: share(c.Percent.Low), High: share(c.Percent.High),
		Volume: known(c.Volume), Moles: known(c.Moles), From: fromOne(c.From),
	}
}

func heldOf(h *levigate.Held) Held {
	return Held{Kind: string(h.Kind), Name: h.Name, Grams: share(h.Grams.Typical), Low: share(h.Grams.Low), High: share(h.Grams.High), From: fromOne(h.From)}
}

// known is null for the 0 that stands for "not on file".
func known(v float64) *float64 {
	if v == 0 {
		return nil
	}
	return number(v)
}

func fromOne(lines []int) []int {
	out := make([]int, len(lines))
	for i, n := range lines {
		out[i] = n + 1
	}
	return out
}
