package sheet

import (
	"levigate"
	"levigate/formulafile"
	"levigate/quantity"
)

// What a step may say; a temperature or a time outside is a slip of the finger.
const (
	coldest, hottest = -50, 300 // °C
	longest          = 100_000  // minutes
)

// sits lists the words for where a powder may sit.
var sits = []string{string(levigate.InOil), string(levigate.InPolyol), string(levigate.Grain)}

// Read finds out what a document says. What its names mean is for Resolve.
func Read(d *levigate.Document) *Sheet {
	r := &reader{}
	s := &Sheet{Formula: &levigate.Formula{}}
	r.head(s, d.Head)
	s.Formula.Materials = r.own(d.Own)
	r.lines(s, d.Lines)
	r.making(s.Formula, d.Making)
	s.Formula.FillUp()
	s.Problems = r.problems
	return s
}

func (r *reader) head(s *Sheet, head map[string]string) {
	f := s.Formula
	at := func(field string) cell { return cell{"head", "", field} }
	one := func(field string, most int) string { return r.short(at(field), clean(head[field]), most) }
	f.Code, f.Name, f.Pack = one("code", formulafile.MaxCode), one("name", formulafile.MaxName), one("pack", formulafile.MaxCode)
	f.Product = r.choice(at("product"), head["product"], levigate.Products)
	if clean(head["product"]) == "" {
		r.report(at("product"), "choose one: it decides whether the product is rinsed off and how much of it is used", "no kind of product is chosen")
	}
	f.Batch = r.mass(at("batch"), head["batch"])
	f.Markets = r.words(at("markets"), head["markets"])
	f.Claims = r.words(at("claims"), head["claims"])
	f.Use = levigate.Use{Area: r.words(at("area"), head["area"]), Eye: r.truth(at("eye"), head["eye"]),
		Spray: r.truth(at("spray"), head["spray"]), Under3: r.truth(at("under-3"), head["under-3"])}
	f.Notes = r.short(at("notes"), prose(head["notes"]), formulafile.MaxNotes)
	if t, ok := r.measure(at("temperature"), head["temperature"], quantity.Celsius, coldest, hottest); ok {
		s.Temperature = &t
	}
}

func (r *reader) lines(s *Sheet, rows []levigate.Row) {
	filled := false
	for i, row := range rows {
		at := func(field string) cell { return cell{"lines", row.ID, field} }
		name := r.short(at("material"), clean(row.Cells["material"]), formulafile.MaxName)
		typed := clean(row.Cells["percent"])
		if typed == "" && clean(row.Cells["material"]) == "" {
			continue // a line she has not come to yet
		}
		p, qs, fault, help := Percent(typed)
		if qs && filled {
			fault, help = "fills up to 100, and so does a line above", "keep one, and give the other a percentage"
		}
		if fault != "" {
			r.report(at("percent"), help, "%s", about(i, name)+" "+fault)
			s.Unread = append(s.Unread, Unread{Row: row.ID, Name: name})
			continue
		}
		filled = filled || qs
		if name == "" {
			r.report(at("material"), "name the raw material, or take the line out", "line %d has a percentage and no raw material", i+1)
		}
		s.Rows = append(s.Rows, row.ID)
		s.Formula.Lines = append(s.Formula.Lines, levigate.Line{
			Phase: r.short(at("phase"), clean(row.Cells["phase"]), formulafile.MaxCode), Name: name, Percent: p, QS: qs,
			Sits: levigate.Sits(r.choice(at("sits"), row.Cells["sits"], sits)), Place: levigate.Place{Line: i + 1, Column: 1},
		})
	}
}

func (r *reader) making(f *levigate.Formula, rows []levigate.Row) {
	for i, row := range rows {
		at := func(field string) cell { return cell{"making", row.ID, field} }
		s := levigate.Step{
			Number: r.short(at("step"), clean(row.Cells["step"]), formulafile.MaxCode),
			Phase:  r.short(at("phase"), clean(row.Cells["phase"]), formulafile.MaxCode),
			Text:   r.short(at("text"), prose(row.Cells["text"]), formulafile.MaxText),
		}
		s.Temperature, s.HasTemp = r.measure(at("temperature"), row.Cells["temperature"], quantity.Celsius, coldest, hottest)
		s.Minutes, _ = r.measure(at("minutes"), row.Cells["minutes"], quantity.Minute, 0, longest)
		if s == (levigate.Step{}) {
			continue
		}
		if s.Text == "" && prose(row.Cells["text"]) == "" {
			r.report(at("text"), "say what is done, or take the step out", "step %d has no text", i+1)
		}
		f.Making = append(f.Making, s)
	}
}
