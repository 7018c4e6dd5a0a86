package papers

import (
	"encoding/binary"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-fonts/dejavu/dejavuserifcondensed"
)

// face is one of the fonts.
type face int

const (
	plain face = iota
	bold
	serif
)

// fonts are the faces: what fpdf calls them, the bytes it embeds, and the
// characters they hold.
var fonts = [...]struct {
	family, style string
	file          []byte
	holds         func() map[rune]bool
}{
	plain: {"sans", "", dejavusanscondensed.TTF, sync.OnceValue(func() map[rune]bool { return held(dejavusanscondensed.TTF) })},
	bold:  {"sans", "B", dejavusanscondensedbold.TTF, sync.OnceValue(func() map[rune]bool { return held(dejavusanscondensedbold.TTF) })},
	serif: {"serif", "", dejavuserifcondensed.TTF, sync.OnceValue(func() map[rune]bool { return held(dejavuserifcondensed.TTF) })},
}

// stranger stands for a character the font does not hold.
const stranger = '\uFFFD'

// shown is a text as a face can draw it, and the characters it could not. fpdf
// draws nothing at all for those and stumbles over some, so they never reach it.
func (f face) shown(text string) (out string, lost []rune) {
	holds := fonts[f].holds()
	var b strings.Builder
	for _, r := range text {
		switch {
		case unicode.IsControl(r), unicode.Is(unicode.Zs, r) && !holds[r]:
			b.WriteByte(' ')
		case unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
			// Never visible: joiners, marks of direction, soft hyphens.
		case !holds[r], leftward(r):
			b.WriteRune(stranger)
			lost = append(lost, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String(), lost
}

// leftward reports a script that runs from right to left: set letter by letter
// it would read backwards, which is worse than not at all.
func leftward(r rune) bool {
	return r >= 0x0590 && r <= 0x08FF || r >= 0xFB1D && r <= 0xFDFF || r >= 0xFE70 && r <= 0xFEFE
}

// held lists the characters a TrueType font has a glyph for, from its table of
// segments (cmap, format 4), which has those up to U+FFFF. A font it cannot read
// holds nothing.
func held(font []byte) map[rune]bool {
	out := map[rune]bool{}
	u16 := func(at int) int {
		if at < 0 || at+2 > len(font) {
			return 0
		}
		return int(binary.BigEndian.Uint16(font[at:]))
	}
	u32 := func(at int) int { return u16(at)<<16 | u16(at+2) }
	cmap := 0
	for i := range u16(4) {
		if at := 12 + 16*i; at+16 <= len(font) && string(font[at:at+4]) == "cmap" {
			cmap = u32(at + 8)
		}
	}
	if cmap == 0 {
		return out
	}
	for i := range u16(cmap + 2) {
		at := cmap + u32(cmap+4+8*i+4)
		if u16(cmap+4+8*i) != 3 || u16(at) != 4 {
			continue
		}
		twice := u16(at + 6) // segments, times two
		ends, starts := at+14, at+16+twice
		deltas, offsets := starts+twice, starts+2*twice
		for s := 0; s < twice; s += 2 {
			for c := u16(starts + s); c <= u16(ends+s) && c < 0xFFFF; c++ {
				glyph := c
				if from := u16(offsets + s); from != 0 {
					if glyph = u16(offsets + s + from + 2*(c-u16(starts+s))); glyph == 0 {
						continue
					}
				}
				if (glyph+u16(deltas+s))&0xFFFF != 0 {
					out[rune(c)] = true
				}
			}
		}
	}
	return out
}
