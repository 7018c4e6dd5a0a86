package sheet

import (
	"strings"

	"levigate/quantity"
)

// Percent reads a percentage as people type it: 12.5, 12,5, 12.5 %, or qs for
// the line that fills up to 100. A fault says what is wrong, help what to do.
func Percent(text string) (p quantity.Decimal, qs bool, fault, help string) {
	s := clean(text)
	switch strings.ToLower(strings.ReplaceAll(s, " ", "")) {
	case "qs", "q.s", "q.s.":
		return p, true, "", ""
	case "":
		return p, false, "has no percentage yet", "type one, or qs on the one line that fills up to 100"
	}
	s = strings.TrimSpace(strings.TrimSuffix(s, "%"))
	if s == "" {
		return p, false, "has a % sign and no number", "type a number like 12.5"
	}
	if strings.Contains(s, ",") && point(s) == s {
		return p, false, text + " has more than one mark between its digits", "write one before the decimals and none between thousands, like 12.5"
	}
	p, err := quantity.ParseDecimal(point(s))
	if err != nil {
		fault, help := parted(err, "type a number like 12.5, or qs on the line that fills up to 100")
		return quantity.Decimal{}, false, fault, help
	}
	return p, false, "", ""
}

// point writes the one comma of a number as a point. With a point or a second
// comma beside it nobody knows what the comma means.
func point(s string) string {
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		return strings.Replace(s, ",", ".", 1)
	}
	return s
}

// parted takes an error apart into what is wrong and what to do.
func parted(err error, otherwise string) (fault, help string) {
	fault, help, found := strings.Cut(err.Error(), "; ")
	if !found {
		help = otherwise
	}
	return fault, help
}
