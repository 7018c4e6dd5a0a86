package cite

import "fmt"

// Grade ranks evidence, best first. A figure shows the weakest it rests on.
type Grade uint8

// The grades. The zero value is the weakest: what nobody vouched for is assumed.
const (
	Assumed Grade = iota
	Estimated
	Compiled
	Reviewed
	MeasuredBySupplier
	MeasuredHere
)

var gradeNames = [...]string{"assumed", "estimated", "compiled", "reviewed", "measured by supplier", "measured here"}

// String is the grade in words.
func (g Grade) String() string {
	if int(g) < len(gradeNames) {
		return gradeNames[g]
	}
	return fmt.Sprintf("grade %d", uint8(g))
}

// ParseGrade reads a grade's words.
func ParseGrade(s string) (Grade, error) {
	for i, n := range gradeNames {
		if n == s {
			return Grade(i), nil
		}
	}
	return Assumed, fmt.Errorf("evidence %q is not one of %q", s, gradeNames)
}

// Weakest is the lower of two grades.
func Weakest(a, b Grade) Grade { return min(a, b) }

// Mark says how a number came into the program.
type Mark uint8

// The marks. The zero value is the weakest.
const (
	FromMemory     Mark = iota // recalled, not re-read: may warn, never stop
	CommonPractice             // a fact of the trade with no source
	Read                       // seen in the source named
)

var markNames = [...]string{"from memory", "common practice", "read"}

// String is the mark in words.
func (m Mark) String() string { return markNames[m] }

// ParseMark reads a mark's words.
func ParseMark(s string) (Mark, error) {
	for i, n := range markNames {
		if n == s {
			return Mark(i), nil
		}
	}
	return FromMemory, fmt.Errorf("mark %q is not one of %q", s, markNames)
}
