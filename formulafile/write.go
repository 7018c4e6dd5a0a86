package formulafile

import (
	"fmt"
	"strconv"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
)

// Write gives a formula as a file, keys in the order of the contract. What the
// file has no key for (where a line stood, what its name was found to mean, the
// ends of a density) is left out.
func Write(f *levigate.Formula) []byte {
	var w writer
	w.put("", "levigate", Edition)
	w.put("", "code", scalar(f.Code))
	w.put("", "name", scalar(f.Name))
	w.put("", "product", scalar(f.Product))
	w.line("lines:")
	for i := range f.Lines {
		w.line("  - " + group(lineEntries(&f.Lines[i])...))
	}
	if len(f.Materials) > 0 {
		w.line("materials:")
	}
	for _, m := range f.Materials {
		w.material(m)
	}
	if len(f.Making) > 0 {
		w.line("making:")
	}
	for i := range f.Making {
		w.step(&f.Making[i])
	}
	if !f.Batch.IsZero() {
		w.put("", "batch", f.Batch.String()+" g")
	}
	w.put("", "markets", words(f.Markets))
	w.put("", "claims", words(f.Claims))
	w.put("", "use", use(f.Use))
	w.put("", "pack", scalar(f.Pack))
	w.put("", "notes", block(f.Notes, "  "))
	return []byte(w.String())
}

// writer writes lines of a file.
type writer struct{ strings.Builder }

func (w *writer) line(s string) { w.WriteString(s + "\n") }

// put writes a key with its value, and nothing for an empty one.
func (w *writer) put(indent, key, v string) {
	if v != "" {
		w.line(indent + key + ": " + v)
	}
}

func lineEntries(l *levigate.Line) []string {
	percent, qs := l.Percent.String(), ""
	if l.QS {
		percent, qs = "", "true"
	}
	return []string{"phase", scalar(l.Phase), "material", scalar(l.Name), "percent", percent, "qs", qs, "sits", scalar(string(l.Sits))}
}

func (w *writer) material(m *levigate.Material) {
	const in = "    "
	w.line("  - name: " + scalar(m.Name))
	w.put(in, "code", scalar(m.Code))
	if m.Density.Known() {
		w.put(in, "density", number(m.Density.Typical)+" "+string(quantity.GramPerML))
	}
	w.line(in + "composition:")
	for _, s := range m.Declared {
		w.line(in + "  - " + group(append([]string{"inci", scalar(s.INCI)}, ranged(s.Percent)...)...))
	}
	if m.Water.Known() {
		w.put(in, "water", group(ranged(m.Water)...))
	}
	w.put(in, "isotherm", isotherm(m.Isotherm))
	w.put(in, "sits", scalar(string(m.Sits)))
	if m.Grade != cite.Assumed {
		w.put(in, "evidence", scalar(m.Grade.String()))
	}
	w.put(in, "source", scalar(m.Source))
}

func (w *writer) step(s *levigate.Step) {
	// The text is always there, so that the dash never stands alone.
	entries := []string{"step", scalar(s.Number), "phase", scalar(s.Phase), "text", block(s.Text, "      ")}
	if s.HasTemp {
		entries = append(entries, "temperature", number(s.Temperature))
	}
	if s.Minutes != 0 {
		entries = append(entries, "minutes", number(s.Minutes))
	}
	indent := "  - "
	for i := 0; i < len(entries); i += 2 {
		if entries[i+1] != "" {
			w.put(indent, entries[i], entries[i+1])
			indent = "    "
		}
	}
}

// ranged gives a range's entries, without ends where it has no width.
func ranged(r levigate.Range) []string {
	out := []string{"percent", percent(r.Typical)}
	if r.Low != r.Typical || r.High != r.Typical {
		out = append(out, "low", percent(r.Low), "high", percent(r.High))
	}
	return out
}

func isotherm(i *levigate.Isotherm) string {
	switch {
	case i == nil:
		return ""
	case i.Model == levigate.GAB:
		return group("gab", "["+number(i.M0)+", "+number(i.C)+", "+number(i.K)+"]")
	case i.Model == levigate.Linear:
		return group("linear", number(i.AtOne.Typical))
	case i.Name != "":
		return group("like", scalar(i.Name))
	}
	return ""
}

func use(u levigate.Use) string {
	if len(u.Area) == 0 && !u.Eye && !u.Spray && !u.Under3 {
		return ""
	}
	truth := func(b bool) string { return fmt.Sprint(b) }
	return group("area", words(u.Area), "eye", truth(u.Eye), "spray", truth(u.Spray), "under-3", truth(u.Under3))
}

// number writes the shortest digits that read back as the same number.
func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// percent writes the number with the decimals that a percentage may have.
func percent(v float64) string {
	s := strconv.FormatFloat(v, 'f', quantity.MaxDecimals, 64)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}
