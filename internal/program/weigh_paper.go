package program

import (
	"path/filepath"

	"levigate"
	"levigate/internal/papers"
)

// WeighedPDF is a weighing list as a paper of a size, "a4" or "letter".
func (p *Program) WeighedPDF(w *Weighed, size string) ([]byte, error) {
	paper, ok := papers.SizeNamed(size)
	if !ok {
		return nil, invalid("paper "+size+" is not known", "name a4 or letter")
	}
	b, err := p.paperOf(w).PDF(paper)
	if err != nil {
		return nil, &levigate.Error{Code: levigate.Internal, Message: "the paper can't be drawn: " + err.Error(), Cause: err}
	}
	return b, nil
}

func (p *Program) paperOf(w *Weighed) *papers.Weighing {
	// The folder stays off the paper: it is nobody's business who is shown it.
	file := filepath.Base(w.File)
	if w.File == "-" || w.File == "" {
		file = "standard input"
	}
	made := p.Made()
	return papers.NewWeighing(w.List, papers.Origin{
		File: file, Product: ProductWords(w.List.Formula.Product), Program: made.Program, Tables: made.Refdata,
		Cautions: BenchCautions(w.List.Formula), Printed: p.Clock(),
	})
}
