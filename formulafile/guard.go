package formulafile

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"levigate"
)

// guard looks at the bytes before any parser does and gives the text with
// plain line ends and no tabs. Every character keeps its line and column.
func (r *reader) guard(data []byte) string {
	start := levigate.Place{Line: 1, Column: 1}
	if len(data) > MaxBytes {
		r.report(start, fmt.Sprintf("a formula takes a few kilobytes, at most %d KiB are read; is this the right file?", MaxBytes>>10), "the file is larger than %d KiB", MaxBytes>>10)
		return ""
	}
	if kind := packed(data); kind != "" {
		r.report(start, "a formula file is plain text; save it as UTF-8 text", "the file is %s, not a formula file", kind)
		return ""
	}
	// A byte order mark is an editor's habit and does no harm.
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if at, b, ok := notUTF8(data); !ok {
		r.report(at, `save the file again with the encoding UTF-8 (it may now be "Windows" or "Latin-1")`, "byte 0x%02X is not UTF-8 text", b)
		return ""
	}
	text := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(data))
	r.characters(text)
	if n := marks(text); n > MaxMarks {
		r.report(start, "a formula takes a few hundred; is this the right file?", "the file has %d brackets, commas, colons, dashes, quotes and line ends, more than %d", n, MaxMarks)
	}
	return strings.ReplaceAll(text, "\t", " ")
}

// packed names the kind of file that some bytes at its beginning betray.
func packed(data []byte) string {
	for _, k := range []struct{ begins, kind string }{
		{"\xFF\xFE\x00\x00", "UTF-32 text"}, {"\x00\x00\xFE\xFF", "UTF-32 text"},
		{"\xFF\xFE", "UTF-16 text"}, {"\xFE\xFF", "UTF-16 text"},
		{"PK\x03\x04", "a spreadsheet, a document or a zip archive"},
		{"%PDF-", "a PDF"}, {"\x89PNG", "a picture"}, {"\xFF\xD8\xFF", "a picture"},
		{"\xD0\xCF\x11\xE0", "an old spreadsheet or document"}, {"SQLite format 3\x00", "a database"},
	} {
		if bytes.HasPrefix(data, []byte(k.begins)) {
			return k.kind
		}
	}
	// UTF-16 without a mark: every second byte of Latin text is zero.
	if len(data) >= 4 && (data[0] == 0 && data[2] == 0 || data[1] == 0 && data[3] == 0) {
		return "UTF-16 text"
	}
	return ""
}

// notUTF8 finds the first byte that is not UTF-8; ok when there is none.
func notUTF8(data []byte) (at levigate.Place, b byte, ok bool) {
	if utf8.Valid(data) {
		return at, 0, true
	}
	at = levigate.Place{Line: 1, Column: 1}
	for len(data) > 0 {
		c, n := utf8.DecodeRune(data)
		switch {
		case c == utf8.RuneError && n == 1:
			return at, data[0], false
		case c == '\n' || c == '\r' && !bytes.HasPrefix(data[n:], []byte("\n")):
			at = levigate.Place{Line: at.Line + 1, Column: 1}
		default:
			at.Column++
		}
		data = data[n:]
	}
	return at, 0, true
}
