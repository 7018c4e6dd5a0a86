package program

import (
	"context"
	"slices"
	"strings"

	"levigate"
	"levigate/internal/assess"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/wire"
)

// Coldest and Warmest bound the temperature a check is made for, °C: below,
// the polar liquid freezes or sets; above, nobody keeps a product.
const Coldest, Warmest = -15.0, 60.0

// Input is what to check and how much of it.
type Input struct {
	Files      []File
	Conditions levigate.Conditions
	Parts      []string // empty for all
	Curves     bool
	Working    bool
	All        bool
}

// Outcome is what came of one file: an assessment, or the problems that kept
// it from being read.
type Outcome struct {
	File       string
	Assessment *levigate.Assessment
	Problems   []levigate.Problem
}

// Blocks reports whether something must be settled before release.
func (o *Outcome) Blocks() bool {
	if o.Assessment == nil {
		return false
	}
	return slices.ContainsFunc(o.Assessment.Findings, func(f levigate.Finding) bool { return f.Blocks() })
}

// Assess checks every file, in the order given. The error is about the request
// as a whole; what is wrong with a file is in its outcome.
func (p *Program) Assess(ctx context.Context, in Input) ([]Outcome, error) {
	if err := in.check(); err != nil {
		return nil, err
	}
	out := make([]Outcome, len(in.Files))
	for i, file := range in.Files {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		out[i] = Outcome{File: file.Name}
		f, problems := p.load(file)
		if out[i].Problems = problems; f != nil {
			out[i].Assessment = p.check(f, in)
		}
	}
	return out, nil
}

func (p *Program) check(f *levigate.Formula, in Input) *levigate.Assessment {
	return assess.Check(assess.Request{
		Formula: f, Library: p.Library, Conditions: in.Conditions, Parts: in.Parts,
		Curves: in.Curves, Working: in.Working, All: in.All,
	})
}

func (in *Input) check() error {
	for _, name := range in.Parts {
		if !slices.Contains(assess.Parts(), name) {
			return invalid("part "+quoted(name)+" is not known", "write one or more of "+strings.Join(assess.Parts(), ", "))
		}
	}
	if t := in.Conditions.Temperature; !(t >= Coldest && t <= Warmest) {
		return invalid(quantity.Significant(t, 4)+" °C is outside what can be checked", "name a temperature from −15 to 60 °C")
	}
	if h := in.Conditions.Humidity; !(h >= 0 && h < 100) {
		return invalid(quantity.Significant(h, 4)+" % is no humidity of air", "name a relative humidity above 0 and below 100 %")
	}
	return nil
}

// Made says which program and data answers are made with.
func (p *Program) Made() wire.Made {
	return wire.Made{Program: "levigate " + p.Version, Refdata: refdata.Fingerprint()}
}

// Wire is an outcome in JSON's shape: an assessment, or a refusal in its
// place.
func (p *Program) Wire(o *Outcome) any {
	if o.Assessment == nil {
		return wire.ErrorOf(o.File, o.Problems)
	}
	return wire.Of(o.Assessment, o.File, p.Made())
}

func invalid(message, help string) error {
	return &levigate.Error{Code: levigate.Invalid, Message: message, Help: help}
}

func quoted(s string) string { return `"` + s + `"` }
