package api

import "strconv"

// count writes small numbers as words, as prose does.
func count(n int) string {
	words := [...]string{"none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}
	if n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}
