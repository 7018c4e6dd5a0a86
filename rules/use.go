package rules

// The uses that legal rows are written for.
const (
	rinseOff = "rinse-off"
	leaveOn  = "leave-on"
	oral     = "oral"
)

// UsesOf says what a product kind counts as. A make-up remover is rinsed off by
// some and left on by others, and a sheet that names no kind may be either: both
// then count, and where they differ the answer is cannot tell.
func UsesOf(product string) []string {
	uses, known := uses[product]
	if !known {
		return either
	}
	return uses
}

var either = []string{rinseOff, leaveOn}

var uses = func() map[string][]string {
	out := map[string][]string{"make-up-remover": either, "toothpaste": {oral}, "mouthwash": {oral}}
	for _, p := range []string{
		"shower-gel", "hand-wash", "shampoo", "hair-conditioner", "hair-dye", "hair-dye-semi", "bath", "shaving", "other-rinse-off",
	} {
		out[p] = []string{rinseOff}
	}
	for _, p := range []string{
		"hair-styling", "body-lotion", "face-cream", "hand-cream", "foundation", "lip", "eye-shadow", "mascara", "eyeliner",
		"deodorant", "deodorant-spray", "sunscreen", "sunscreen-lip", "eau-de-toilette", "perfume", "aftershave", "other-leave-on",
	} {
		out[p] = []string{leaveOn}
	}
	return out
}()

// barred is the reason a row forbids this product, in words; empty when it does
// not.
func (s *Subject) barred(notIn []string) string {
	f := s.Formula
	for _, where := range notIn {
		switch {
		case where == "spray" && (f.Use.Spray || f.Product == "deodorant-spray"):
			return "sprays"
		case where == "inhaled" && (f.Use.Spray || f.Product == "deodorant-spray"):
			return "products that may be breathed in"
		case where == oral && UsesOf(f.Product)[0] == oral:
			return "products for the mouth"
		case where == leaveOn && UsesOf(f.Product)[0] == leaveOn:
			return "products left on the skin"
		case where == "under-3" && f.Use.Under3:
			return "products for children under 3"
		}
	}
	return ""
}
