// Refit makes the water isotherms of the solutes from the measured points:
//
//	go run ./tools/refit          fits, prints the errors, writes refdata/isotherms/solutes.tsv
//	go run ./tools/refit -check   fits and fails where the file would change
//
// What is fitted to what, with which weights, what is kept aside and how wide
// each band is at least stands in the plan files. A fit repeats to the last
// digit, so the file never changes by itself.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"levigate/refdata"
)

func main() {
	check := flag.Bool("check", false, "fail where the table would change instead of writing it")
	flag.Parse()
	results := fitted(refdata.Measured())
	file := filepath.Join("refdata", "isotherms", "solutes.tsv")
	have, err := os.ReadFile(file)
	if err != nil {
		fmt.Fprintln(os.Stderr, "refit:", err)
		os.Exit(1)
	}
	text := card(string(have)) + table(results)
	if *check {
		if string(have) != text {
			fmt.Fprintf(os.Stderr, "refit: %s is not what the measured points give; run go run ./tools/refit\n", file)
			os.Exit(1)
		}
		return
	}
	fmt.Print(report(results))
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		fmt.Fprintln(os.Stderr, "refit:", err)
		os.Exit(1)
	}
}

// fitted runs every plan to its finished row.
func fitted(points []refdata.Point) []result {
	results, known := fitAll(points)
	for i := range results {
		results[i].setBand()
		results[i].setSaturation(known)
		results[i].keepSolutions(points)
	}
	return results
}
