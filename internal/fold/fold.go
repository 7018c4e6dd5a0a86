// Package fold gives the form in which names are compared and searched: case,
// accents and spare spaces aside.
package fold

import (
	"unicode"
	"unicode/utf8"
)

// plain maps letters with diacritics, and a few signs found in raw material
// names, to what a person without them on the keyboard types.
var plain = letters(map[string]string{
	"a": "àáâãäåāăąǎạảấầẩẫậắằẳẵặ", "ae": "æ", "c": "çćĉċč", "d": "ďđð", "e": "èéêëēĕėęěẹẻẽếềểễệ", "g": "ĝğġģ", "h": "ĥħ",
	"i": "ìíîïĩīĭįıỉị", "j": "ĵ", "k": "ķ", "l": "ĺļľŀł", "n": "ñńņňŉ", "o": "òóôõöøōŏőơọỏốồổỗộớờởỡợ", "oe": "œ", "r": "ŕŗř",
	"s": "śŝşšș", "ss": "ß", "t": "ţťŧț", "th": "þ", "u": "ùúûüũūŭůűųưụủứừửữựµμ", "w": "ŵẁẃẅ", "y": "ýÿŷỳỵỷỹ", "z": "źżž",
	"-": "‐‑‒–—−", "'": "’‘ʼ", "2": "²", "3": "³",
})

func letters(groups map[string]string) map[rune]string {
	out := map[rune]string{}
	for to, from := range groups {
		for _, r := range from {
			out[r] = to
		}
	}
	return out
}

// String is the form two names are compared in.
func String(s string) string { return string(Append(nil, s)) }

// Append appends the folded name to dst, so that a look-up needs no memory of
// its own.
func Append(dst []byte, s string) []byte {
	start, gap, comma := len(dst), false, false
	put := func(b byte) {
		switch {
		case len(dst) == start, gap && b == '%': // "99.5 %" and "99.5%" are one thing
		case gap: // a comma beside a space says no more than the space
			dst = append(dst, ' ')
		case comma: // one inside a word, as in 1,3-propanediol, stays
			dst = append(dst, ',')
		}
		gap, comma = false, false
		dst = append(dst, b)
	}
	for i := 0; i < len(s); {
		b := s[i]
		if b < utf8.RuneSelf {
			i++
			switch {
			case 'A' <= b && b <= 'Z':
				put(b + 'a' - 'A')
			case b <= ' ', b == 0x7f:
				gap = true
			case b == ',':
				comma = true
			default:
				put(b)
			}
			continue
		}
		r, n := utf8.DecodeRuneInString(s[i:])
		i += n
		r = unicode.ToLower(r)
		switch to, ok := plain[r]; {
		case ok:
			for j := range len(to) {
				put(to[j])
			}
		case unicode.Is(unicode.Mn, r): // an accent written apart from its letter
		case unicode.IsSpace(r):
			gap = true
		default:
			var buf [utf8.UTFMax]byte
			for _, b := range buf[:utf8.EncodeRune(buf[:], r)] {
				put(b)
			}
		}
	}
	return dst
}
