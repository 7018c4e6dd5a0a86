package exchange

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/formulafile"
)

// heading is the first line of a price list, as it may be copied.
const heading = "material,paid,currency,pack,freight,other,date,supplier,notes"

// column is one column of a price list. One without a name has no cells; one
// that is unknown, or there twice, was reported at its heading.
type column struct {
	name    string
	needed  bool
	unknown bool
	twice   bool
	most    int // characters in a cell
	empty   string
	help    string
	read    func(*reader, *levigate.Price, string) error
}

// columns lists what a price list may hold, in the order it is best written.
var columns = []column{
	{name: "material", needed: true, most: maxName, empty: "no raw material is named", help: "write its code, name or INCI name", read: readMaterial},
	{name: "paid", needed: true, most: maxCell, empty: "no amount is written", help: "write what was paid for the goods, like 62.50; 0 for what costs nothing", read: readPaid},
	{name: "currency", needed: true, most: maxCell, empty: "no currency is written", help: "write the three capital letters of the currency, like EUR, GBP or USD", read: readCurrency},
	{name: "pack", needed: true, most: maxCell, empty: "no pack size is written", help: "write the mass in the pack with its unit, like 5 kg", read: readPack},
	{name: "freight", most: maxCell, help: "write this pack's part of the freight, like 4.20; 0 for none", read: readFreight},
	{name: "other", most: maxCell, help: "write duty, bank and handling fees, like 1.50", read: readOther},
	{name: "date", needed: true, most: maxCell, empty: "no date is written", help: "write year-month-day, like 2026-03-09", read: readDate},
	{name: "supplier", most: maxName, read: readSupplier},
	{name: "notes", most: maxNotes, read: readNotes},
}

// synonyms are words people write for a column, where no misspelling leads there.
var synonyms = map[string]string{
	"ingredient": "material", "inci": "material", "name": "material", "code": "material", "item": "material", "product": "material", "raw material": "material",
	"price": "paid", "amount": "paid", "cost": "paid", "goods": "paid", "total": "paid",
	"size": "pack", "quantity": "pack", "mass": "pack", "weight": "pack", "unit": "pack",
	"shipping": "freight", "postage": "freight", "carriage": "freight", "delivery": "freight",
	"duty": "other", "fees": "other", "charges": "other", "day": "date", "bought": "date",
	"vendor": "supplier", "shop": "supplier", "seller": "supplier", "from": "supplier", "comment": "notes", "remark": "notes", "remarks": "notes",
}

func known(name string) *column {
	for i := range columns {
		if columns[i].name == strings.ToLower(strings.TrimSpace(name)) {
			return &columns[i]
		}
	}
	return nil
}

// nearest is the known column that an unknown name was probably meant to be.
func nearest(name string) string {
	if s := synonyms[strings.ToLower(name)]; s != "" {
		return s
	}
	var names []string
	for _, c := range columns {
		names = append(names, c.name)
	}
	return formulafile.NearestWord(name, names)
}

// head reads the heading, and reports whether it is one: where no column is
// known, this is no price list and nothing is gained by reading on.
func (r *reader) head(w row) bool {
	first := map[string]int{}
	meant := map[string]bool{}
	for i := range w.cells {
		name := w.cell(i)
		c := known(name)
		if c == nil {
			r.columns = append(r.columns, column{unknown: name != ""})
			continue
		}
		if before, twice := first[c.name]; twice {
			r.columns = append(r.columns, column{twice: true})
			r.report(w.at(i), "keep one of them", "column %q stands in the heading twice, as cell %d and cell %d", c.name, before+1, i+1)
			continue
		}
		r.columns = append(r.columns, *c)
		first[c.name] = i
	}
	if len(first) == 0 {
		r.problems = nil // what else is odd about it says nothing
		r.report(w.at(0), "the first line names the columns: "+heading+"; is this the right file?", "the first line is no heading of a price list")
		return false
	}
	for i, c := range r.columns {
		if c.unknown {
			help := "the columns are " + strings.ReplaceAll(heading, ",", ", ")
			if near := nearest(w.cell(i)); near != "" {
				meant[near] = true
				help = fmt.Sprintf("did you mean %q? The", near) + strings.TrimPrefix(help, "the")
			}
			r.report(w.at(i), help, "a column %q is not known", short(w.cell(i), 60))
		}
	}
	var missing []string
	for _, c := range columns {
		if _, there := first[c.name]; !there && c.needed && !meant[c.name] {
			missing = append(missing, c.name)
		}
	}
	if len(missing) > 0 {
		r.report(w.at(0), "the first line names the columns: "+heading, "the heading has no column %s", strings.Join(missing, ", "))
	}
	return true
}

// short keeps a message from carrying a paragraph.
func short(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
