package exchange

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"levigate"
)

var today = time.Date(2026, 7, 15, 12, 0, 0, 0, time.UTC)

const head = "material,paid,currency,pack,freight,other,date,supplier,notes\n"

func read(t *testing.T, text string) []levigate.Price {
	t.Helper()
	prices, problems := Prices("list", []byte(text), today)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return prices
}

// One price, written in the ways a spreadsheet saves it.
func TestForms(t *testing.T) {
	for name, text := range map[string]string{
		"comma":           head + "\"Kaolin, fine white\",12.50,EUR,5 kg,4.20,1,2026-02-03,Potters Row,none\n",
		"quoted comma":    head + "\"Kaolin, fine white\",\"12,50\",EUR,5 kg,\"4,2\",1,2026-02-03,Potters Row,none",
		"after a space":   head + "\"Kaolin, fine white\", \"12,50\", EUR, 5 kg, 4.2, 1, 2026-02-03, Potters Row, none",
		"semicolon":       strings.ReplaceAll(head, ",", ";") + "Kaolin, fine white;12,50;EUR;5,0 kg;4,2;1;2026-02-03;Potters Row;none\n;;;;;;;;\n",
		"tab":             strings.ReplaceAll(head, ",", "\t") + "Kaolin, fine white\t12,50\tEUR\t5kg\t4,2\t1\t2026-02-03\tPotters Row\tnone\n",
		"windows, BOM":    "\uFEFF" + strings.ReplaceAll(head, "\n", "\r\n") + "\r\n\"Kaolin, fine white\",12.50,EUR,5 kg,4.20,1,2026-02-03,Potters Row,none\r\n",
		"old mac":         strings.ReplaceAll(head, "\n", "\r") + "\"Kaolin, fine white\",12.50,EUR,5 kg,4.20,1,2026-02-03,Potters Row,none\r",
		"another order":   "notes;Date;PACK;\"currency\";paid;freight;other;supplier;material;;\nnone;2026-02-03;5 kg;EUR;12.5;4.2;1;Potters Row;Kaolin, fine white;;\n",
		"remarks, blanks": "# mine, all of it\n\n" + head + "\n# a remark\n   \n\"Kaolin, fine white\",12.50,EUR,5 kg,4.20,1,2026-02-03,Potters Row,none\n",
	} {
		p := read(t, text)
		if len(p) != 1 {
			t.Errorf("%s: %d prices", name, len(p))
			continue
		}
		got := fmt.Sprint(p[0].Material, p[0].Paid, p[0].Currency, p[0].Grams, p[0].Freight, p[0].FreightStated, p[0].Other, p[0].Date.Format(time.DateOnly), p[0].Supplier, p[0].Notes, p[0].File)
		if want := "Kaolin, fine white12.5 EUR 5000/1 4.2 true 12026-02-03Potters Rownonelist"; strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(want, " ", "") {
			t.Errorf("%s: %s", name, got)
		}
	}
	if p := read(t, "material,paid,currency,pack,date\nAqua,0,EUR,1 kg,2026-01-01\n"); p[0].FreightStated || p[0].Place.Line != 2 {
		t.Errorf("%+v", p[0])
	}
}

// Each slip is told with its place, its column and what to do.
func TestSlips(t *testing.T) {
	const good = "Aqua,1,EUR,1 kg,0,0,2026-01-01,x,y\n"
	row := func(column int, cell string) string {
		cells := strings.Split(strings.TrimSpace(good), ",")
		cells[column] = cell
		return head + strings.Join(cells, ",")
	}
	for name, c := range map[string]struct {
		text       string
		line       int
		says, help string
	}{
		"empty":             {"", 1, "is empty", "begin with a heading"},
		"remarks only":      {"# nothing\n", 1, "is empty", "begin with a heading"},
		"heading only":      {head, 1, "no prices", "one line a price"},
		"no heading":        {good, 1, "no heading", "names the columns"},
		"unknown column":    {strings.Replace(head, "freight", "fright", 1) + good, 1, `"fright" is not known`, `"freight"`},
		"synonym":           {strings.Replace(head, "freight", "shipping", 1) + good, 1, `"shipping" is not known`, `"freight"`},
		"strange column":    {strings.Replace(head, "notes", "zzzzzzzz", 1) + good, 1, `"zzzzzzzz" is not known`, "the columns are"},
		"column twice":      {strings.Replace(head, "notes", "paid", 1) + good, 1, "twice", "keep one"},
		"column missing":    {"material,paid,currency,pack\nAqua,1,EUR,1 kg\n", 1, "no column date", "names the columns"},
		"no material":       {row(0, ""), 2, `"material": no raw material`, "code, name"},
		"no amount":         {row(1, " "), 2, `"paid": no amount`, "62.50"},
		"below zero":        {row(1, "-3"), 2, "below zero", "discounts"},
		"with its sign":     {row(1, "€3"), 2, "not an amount", "own column"},
		"in words":          {row(1, "three"), 2, "not an amount", "digits alone"},
		"thousand or one":   {row(1, `"1,250"`), 2, "may be 1250 or 1.25", "write 1250 or 1.25"},
		"plainly thousand":  {row(1, `"1,000"`), 2, "may be 1000 or 1", "no mark"},
		"two marks":         {row(1, `"1.250,00"`), 2, "not a number", "at most one mark"},
		"too much":          {row(1, "10000000000"), 2, "too much", "point"},
		"many decimals":     {row(1, "1.2345678"), 2, "7 decimals", "62.50"},
		"currency small":    {row(2, "eur"), 2, `"currency"`, "write EUR"},
		"volume":            {row(3, "5 L"), 2, `"pack": "5 L" is a volume`, "mass = volume × density"},
		"no unit":           {row(3, "5"), 2, "no unit", "kg"},
		"pack of thousand":  {row(3, `"1,000 kg"`), 2, "may be 1000 or 1", "no mark"},
		"freight odd":       {row(4, "free"), 2, `"freight"`, "digits"},
		"other odd":         {row(5, "?"), 2, `"other"`, "digits"},
		"date turned round": {row(6, "03/02/2026"), 2, "not a date", "2026-03-09"},
		"date to come":      {row(6, "2026-07-16"), 2, "in the future", "day on which"},
		"too many cells":    {row(0, "Kaolin, fine white"), 2, "10 cells and the heading 9", "quotation marks"},
		"cell of no column": {"material,paid,currency,pack,date,\nAqua,1,EUR,1 kg,2026-01-01,x\n", 2, "under no heading", "name the column"},
		"long name":         {row(0, strings.Repeat("x", 201)), 2, "more than 200", "shorten"},
		"control character": {row(8, "a\x07b"), 2, "control character", "delete"},
		"quote in a cell":   {row(8, `the "white" one`), 2, "quotation mark", "double one"},
		"quote not closed":  {row(8, `"the white one`), 2, "quotation mark", "double one"},
		"not UTF-8":         {row(8, "caf\xe9"), 2, "0xE9", "CSV UTF-8"},
		"a workbook":        {"PK\x03\x04zzzz", 1, "a spreadsheet", "CSV"},
		"dear beyond sense": {strings.Replace(row(1, "900000000"), "1 kg", "1 mg", 1), 2, "a kilogram comes to more", "belong together"},
		"too large":         {head + strings.Repeat(good, MaxBytes/len(good)+1), 1, "larger than", "right file"},
		"many cells":        {head + good + strings.Repeat(",", 500_000) + "x", 3, "500001 cells", "right file"},
		"many separators":   {strings.Repeat(",", 500_000) + "x", 1, "500001 cells", "right file"},
		"too many":          {head + strings.Repeat(good, MaxPrices+1), MaxPrices + 2, "more than 5000 prices", "cut it"},
		"point among comma": {head + "Aqua,\"1,5\",EUR,1 kg,0,0,2026-01-01,x,y\nAqua,1.250,EUR,1 kg,0,0,2026-01-02,x,y\n", 3, "may be 1250 or 1.25", "1250"},
	} {
		prices, problems := Prices("list", []byte(c.text), today)
		if len(problems) != 1 || prices != nil {
			t.Errorf("%s: %d prices, problems %v", name, len(prices), problems)
			continue
		}
		if p := problems[0]; p.Line != c.line || p.Column < 1 || !strings.Contains(p.Text, c.says) || !strings.Contains(p.Help, c.help) {
			t.Errorf("%s: %s (help: %s)", name, p, p.Help)
		}
	}
}

// All that is wrong is told at once, in the order of the file, each at its column
// counted in characters.
func TestAllAtOnce(t *testing.T) {
	text := "material;paid;curency;pack;date\nÖl;x;EUR;1 kg;2026-01-01\nAqua;1;EUR;1 L;soon\n"
	_, problems := Prices("list", []byte(text), today)
	var got []string
	for _, p := range problems {
		got = append(got, fmt.Sprintf("%d:%d", p.Line, p.Column))
	}
	if s := strings.Join(got, " "); s != "1:15 2:4 3:12 3:16" {
		t.Errorf("%s\n%v", s, problems)
	}
	_, problems = Prices("list", []byte(head+strings.Repeat("Aqua,x,EUR,1 kg,0,0,2026-01-01,x,y\n", 999)), today)
	if n := len(problems); n != MaxProblems+1 || !strings.Contains(problems[n-1].Text, "not listed") {
		t.Errorf("%d problems, the last %s", n, problems[n-1])
	}
}

func TestReadPrices(t *testing.T) {
	if prices, problems, err := ReadPrices("../../examples/prices.csv", today); err != nil || len(problems) > 0 || len(prices) < 40 {
		t.Error(len(prices), problems, err)
	}
	if _, _, err := ReadPrices(filepath.Join(t.TempDir(), "none"), today); levigate.CodeOf(err) != levigate.NotFound {
		t.Error(err)
	}
	if _, _, err := ReadPrices(t.TempDir(), today); levigate.CodeOf(err) != levigate.Invalid {
		t.Error(err)
	}
}

// FuzzPrices holds for any bytes: no panic, no problem without a place, a text
// and something to do, and prices or problems but never both.
func FuzzPrices(f *testing.F) {
	example, err := os.ReadFile("../../examples/prices.csv")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(example[:2000])
	for _, s := range []string{
		"", "#", head, head + "Aqua,1,EUR,1 kg,0,0,2026-01-01,x,y\n", "\uFEFF" + head + "\"a\nb\",\"1,5\",EUR,\"1,5 lb\",,,2026-01-01,,\n",
		strings.ReplaceAll(head, ",", ";") + "Öl;1,250;€;5 L;;;1/2/26;\"x\n", "material\tpaid\tcurrency\tpack\tdate\n\t\t\n\"\"\t1\tEUR\t1g\t2026-01-01\t\t\n",
		"material,,paid\r\r\n,,,,,\"\r", "material,paid,currency,pack,date\nx,1.250,EUR,\"1,5 kg\",2026-01-01\n", "PK\x03\x04", "\xff\xfe", "a;b,c\td\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		prices, problems := Prices("fuzz", data, today)
		for _, p := range problems {
			if p.Line < 1 || p.Column < 1 || p.Text == "" || p.Help == "" {
				t.Fatalf("a problem lacks its place, text or help: %+v", p)
			}
		}
		if (len(prices) == 0) != (len(problems) > 0) {
			t.Fatalf("%d prices, with %d problems", len(prices), len(problems))
		}
		for _, p := range prices {
			if p.Material == "" || len(p.Currency) != 3 || p.Grams.Sign() <= 0 || p.Landed().Sign() < 0 || p.Landed().Cmp(levigate.MostLanded.Exact()) > 0 || p.Date.After(today) || p.Place.Line < 1 {
				t.Fatalf("%+v", p)
			}
		}
	})
}
