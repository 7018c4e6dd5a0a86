package exchange

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"levigate"
	"levigate/formulafile"
	"levigate/quantity"
)

// price reads one line. What is wrong with it is reported cell by cell.
func (r *reader) price(w row) levigate.Price {
	p := levigate.Price{File: r.name, Place: w.at(0)}
	before := len(r.problems)
	for i := len(r.columns); i < len(w.cells); i++ {
		if w.cell(i) != "" {
			// Cells moved by one would each be a fault; the cause is this.
			r.report(w.at(i), "put a name or number that holds the separator in quotation marks", "the line has %d cells and the heading %d", len(w.cells), len(r.columns))
			return p
		}
	}
	for i := range r.columns {
		c, text := &r.columns[i], w.cell(i)
		switch {
		case c.unknown, c.twice, c.name == "" && text == "":
		case c.name == "":
			r.report(w.at(i), "name the column in the heading, or clear the cell", "cell %d stands under no heading", i+1)
		case text == "" && c.needed:
			r.report(w.at(i), c.help, "column %q: %s", c.name, c.empty)
		case text == "":
		case utf8.RuneCountInString(text) > c.most:
			r.report(w.at(i), "shorten it", "column %q: the cell has more than %d characters", c.name, c.most)
		case unseen(text) != "":
			r.report(w.at(i), "delete it", "column %q: %s stands here", c.name, unseen(text))
		default:
			if err := c.read(r, &p, text); err != nil {
				r.report(w.at(i), helpOf(err, c.help), "column %q: %s", c.name, short(err.Error(), 200))
			}
		}
	}
	if len(r.problems) == before && p.Grams != nil && p.Landed().Cmp(levigate.MostLanded.Exact()) > 0 {
		r.report(w.at(0), "see whether amount and pack belong together", "a kilogram comes to more than %s %s", levigate.MostLanded, p.Currency)
	}
	return p
}

// unseen names the first character of a cell that has no place in one. Line ends
// may stand in notes.
func unseen(text string) string {
	for _, c := range text {
		switch {
		case c == '\n' || c == '\t':
		case formulafile.Hidden(c) != "":
			return formulafile.Hidden(c)
		case c == utf8.RuneError:
			return "a character that was lost when the file was saved"
		}
	}
	return ""
}

// helpOf is the help an error carries, or the column's.
func helpOf(err error, otherwise string) string {
	if e, ok := errors.AsType[*levigate.Error](err); ok && e.Help != "" {
		return e.Help
	}
	return otherwise
}

func readMaterial(_ *reader, p *levigate.Price, text string) error {
	p.Material = oneLine(text)
	return nil
}

func readPaid(r *reader, p *levigate.Price, text string) (err error) {
	p.Paid, err = r.amount(text)
	return err
}

func readFreight(r *reader, p *levigate.Price, text string) (err error) {
	p.Freight, err = r.amount(text)
	p.FreightStated = true
	return err
}

func readOther(r *reader, p *levigate.Price, text string) (err error) {
	p.Other, err = r.amount(text)
	return err
}

func readCurrency(_ *reader, p *levigate.Price, text string) (err error) {
	p.Currency, err = levigate.ParseCurrency(text)
	return err
}

func readPack(r *reader, p *levigate.Price, text string) error {
	number := leading.FindString(text)
	point, err := r.point(number)
	if err != nil {
		return err
	}
	p.Pack = oneLine(text)
	p.Grams, err = levigate.ParsePack(point + text[len(number):])
	return err
}

func readDate(r *reader, p *levigate.Price, text string) (err error) {
	p.Date, err = levigate.ParseDay(text, r.today)
	return err
}

func readSupplier(_ *reader, p *levigate.Price, text string) error {
	p.Supplier = oneLine(text)
	return nil
}

func readNotes(_ *reader, p *levigate.Price, text string) error {
	p.Notes = oneLine(text)
	return nil
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

var (
	leading = regexp.MustCompile(`^[0-9.,]+`)
	comma   = regexp.MustCompile(`^[0-9]+,[0-9]+$`)
	// Three figures behind the mark, and no nought alone before it: a thousand in
	// one country and a little more than one in the next.
	thousandComma = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
	thousandPoint = regexp.MustCompile(`^[1-9][0-9]{0,2}\.[0-9]{3}$`)
)

// amount reads money.
func (r *reader) amount(text string) (quantity.Decimal, error) {
	if strings.HasPrefix(text, "-") || strings.HasPrefix(text, "−") {
		return quantity.Decimal{}, refused(`"`+text+`" is below zero`, "write what was paid in the end, after discounts and refunds")
	}
	point, err := r.point(text)
	if err != nil {
		return quantity.Decimal{}, err
	}
	if strings.ContainsFunc(point, func(c rune) bool { return (c < '0' || c > '9') && c != '.' }) {
		return quantity.Decimal{}, refused(`"`+text+`" is not an amount`, "write the digits alone, like 62.50; the currency has its own column")
	}
	d, err := quantity.ParseDecimal(point)
	if err == nil && d.Cmp(levigate.MostPaid) > 0 {
		err = refused(text+" is too much for one pack", "see whether the point stands where it should")
	}
	return d, err
}

// point writes a number with a decimal point, and refuses one that two countries
// read differently.
func (r *reader) point(number string) (string, error) {
	switch {
	case thousandComma.MatchString(number):
		return "", ambiguous(number, ",")
	case thousandPoint.MatchString(number) && r.commas:
		return "", ambiguous(number, ".")
	case comma.MatchString(number):
		return strings.Replace(number, ",", ".", 1), nil
	case strings.Contains(number, ","):
		return "", refused(`"`+number+`" is not a number`, "write digits with at most one mark, before the decimals: 1250.50")
	}
	return number, nil
}

func ambiguous(number, mark string) error {
	thousand := strings.Replace(number, mark, "", 1)
	few := strings.TrimSuffix(strings.TrimRight(strings.Replace(number, mark, ".", 1), "0"), ".")
	return refused(fmt.Sprintf("%q may be %s or %s", number, thousand, few), "write "+thousand+" or "+few+": no mark between thousands")
}

func refused(what, help string) error {
	return &levigate.Error{Code: levigate.Invalid, Message: what, Help: help}
}

// usesCommas reports whether any number of the list is plainly written with a
// decimal comma.
func (r *reader) usesCommas(rows []row) bool {
	for i := range r.columns {
		switch r.columns[i].name {
		case "paid", "freight", "other", "pack":
		default:
			continue
		}
		for _, w := range rows {
			if n := leading.FindString(w.cell(i)); comma.MatchString(n) && !thousandComma.MatchString(n) {
				return true
			}
		}
	}
	return false
}
