package ui

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// luminance of a colour, as WCAG 2.2 defines it.
func luminance(hex string) float64 {
	part := func(at int) float64 {
		v, _ := strconv.ParseUint(hex[at:at+2], 16, 8)
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(1) + 0.7152*part(3) + 0.0722*part(5)
}

func contrast(a, b string) float64 {
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

var property = regexp.MustCompile(`--([a-z0-9-]+): (#[0-9A-Fa-f]{6});`)

// themes reads the colours of light and dark out of the style sheet itself.
func themes(t *testing.T) map[string]map[string]string {
	t.Helper()
	read := func(block string) map[string]string {
		out := map[string]string{}
		for _, m := range property.FindAllStringSubmatch(block, -1) {
			out[m[1]] = m[2]
		}
		return out
	}
	light, rest, _ := strings.Cut(tokens, "@media (prefers-color-scheme: dark)")
	_, dark, ok := strings.Cut(rest, `:root[data-theme="dark"]`)
	if !ok {
		t.Fatal("the style sheet has no dark theme to choose")
	}
	auto, _, _ := strings.Cut(rest, `:root[data-theme="dark"]`)
	dark, _, _ = strings.Cut(dark, "}")
	return map[string]map[string]string{"light": read(light), "dark": read(dark), "dark by the system": read(auto)}
}

// Text reaches 4.5 to 1, marks and lines that carry meaning 3 to 1, on paper
// and on a slip alike.
func TestContrast(t *testing.T) {
	for name, colours := range themes(t) {
		for _, need := range []struct {
			least float64
			of    []string
		}{{4.5, []string{"ink", "ink-2", "ink-3", "stop", "warn"}}, {3, []string{"rule", "water", "polyol", "oil", "grain", "other"}}} {
			for _, c := range need.of {
				for _, ground := range []string{"paper", "slip"} {
					if colours[c] == "" || colours[ground] == "" {
						t.Fatalf("%s: no colour %s or %s", name, c, ground)
					}
					if got := contrast(colours[c], colours[ground]); got < need.least {
						t.Errorf("%s: %s on %s is %.2f to 1, needs %.1f", name, c, ground, got, need.least)
					}
				}
			}
		}
	}
}

// The check must be able to fail.
func TestContrastCatchesGrey(t *testing.T) {
	if c := contrast("#999999", "#FBF9F3"); c >= 4.5 {
		t.Errorf("light grey passes with %.2f", c)
	}
	if c := contrast("#000000", "#FFFFFF"); math.Abs(c-21) > 1e-9 { // WCAG's own end of the scale
		t.Errorf("black on white is %g", c)
	}
}

// The page loads nothing from elsewhere and holds no script and no style of its
// own, as its policy demands.
func TestPagesKeepThePolicy(t *testing.T) {
	files, err := Pages.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := Pages.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		for _, bad := range []string{"<script", " style=", "<style", "http:", "https:", " onclick", "javascript:"} {
			if strings.Contains(string(text), bad) {
				t.Errorf("%s holds %q", f.Name(), bad)
			}
		}
	}
	if css := string(CSS()); strings.Contains(css, "url(") || strings.Contains(css, "@import") {
		t.Error("the style sheet loads something")
	}
}

func TestPlacesHaveNames(t *testing.T) {
	css := string(CSS())
	for _, class := range []string{".at-1{", fmt.Sprintf(".at-%d{", mostRows), ".to-7{", ".for-12{"} {
		if !strings.Contains(css, class) {
			t.Errorf("the style sheet lacks %s", class)
		}
	}
}
