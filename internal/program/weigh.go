package program

import (
	"strings"

	"levigate"
	"levigate/internal/assess/weighing"
	"levigate/quantity"
	"levigate/wire"
)

// WeighInput is what to weigh, as it was typed.
type WeighInput struct {
	File      File
	Batch     string // with its unit; empty for the formula's own
	Balances  []string
	Tolerance string // %
}

// Weighed is what came of one file: a weighing list, or the problems that kept
// it from being read.
type Weighed struct {
	File     string
	List     *levigate.WeighingList
	Problems []levigate.Problem
}

// Weigh makes the weighing list of one formula file.
func (p *Program) Weigh(in WeighInput) (*Weighed, error) {
	balances := make([]levigate.Balance, len(in.Balances))
	for i, text := range in.Balances {
		b, err := levigate.ParseBalance(text)
		if err != nil {
			return nil, err
		}
		balances[i] = b
	}
	tolerance, err := quantity.ParseDecimal(strings.TrimSpace(strings.TrimSuffix(in.Tolerance, "%")))
	if err != nil {
		return nil, invalid("tolerance: "+err.Error(), "write a percentage of the line, like 2")
	}
	var batch quantity.Decimal
	if in.Batch != "" {
		if batch, err = levigate.ParseGrams(in.Batch); err != nil {
			return nil, invalid("batch: "+err.Error(), "write grams or kilograms with the unit, like 500 g or 5 kg")
		}
	}
	out := &Weighed{File: in.File.Name}
	f, problems := p.load(in.File)
	if out.Problems = problems; f == nil {
		return out, nil
	}
	if in.Batch == "" {
		if batch = f.Batch; batch.IsZero() {
			return nil, invalid("the formula names no batch", "add batch: 500 g to it, or --batch 500g here")
		}
	}
	list, err := weighing.List(f, batch, balances, tolerance)
	if err != nil {
		return nil, err
	}
	out.List = &list
	return out, nil
}

// WireWeighed is a weighing list in JSON's shape, or a refusal in its place.
func (p *Program) WireWeighed(w *Weighed) any {
	if w.List == nil {
		return wire.ErrorOf(w.File, w.Problems)
	}
	return wire.WeighingOf(w.List, w.File, p.Made())
}
