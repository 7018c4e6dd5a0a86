package refdata

import "sync"

// Clashes lists the rows about substances that clash in one polar liquid, in
// the order they are asked. They have the columns of the pairs; column a is the
// side whose share the row counts from.
func Clashes() []Pair { return allClashes() }

var allClashes = sync.OnceValue(func() []Pair {
	rows, err := readPairs(mustOpen("pairs/clashes"))
	if err != nil {
		panic("refdata: " + err.Error())
	}
	return rows
})
