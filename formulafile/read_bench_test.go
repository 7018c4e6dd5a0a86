package formulafile

import (
	"fmt"
	"strings"
	"testing"
)

func fortyLines() []byte {
	var b strings.Builder
	b.WriteString("levigate: formula/1\ncode: B-40\nname: Forty lines\nproduct: face-cream\nlines:\n")
	for i := range 39 {
		fmt.Fprintf(&b, "  - {phase: %c, material: \"Raw material no. %d, refined\", percent: %d.25}\n", 'A'+i/10, i, i%3)
	}
	b.WriteString("  - {phase: A, material: Aqua, qs: true}\nbatch: 500 g\n")
	return []byte(b.String())
}

func BenchmarkRead(b *testing.B) {
	data := fortyLines()
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, problems := Read("bench", data); len(problems) > 0 {
			b.Fatal(problems)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	f := read(b, string(fortyLines()))
	b.ReportAllocs()
	for b.Loop() {
		Write(f)
	}
}

// BenchmarkHostile shows what the worst files cost.
func BenchmarkHostile(b *testing.B) {
	for name, text := range hostile() {
		b.Run(strings.ReplaceAll(name, " ", "-"), func(b *testing.B) {
			for b.Loop() {
				Read(name, []byte(text))
			}
		})
	}
}
