package main

import (
	"strings"

	"levigate"
	"levigate/internal/program"
)

// headline names a formula: code, name and kind of product, as far as it says.
func headline(f *levigate.Formula) string {
	var parts []string
	for _, s := range []string{f.Code, f.Name, program.ProductWords(f.Product)} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, " · ")
}
