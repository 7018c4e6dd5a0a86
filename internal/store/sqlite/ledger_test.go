package sqlite

import (
	"strings"
	"testing"
)

// Whoever edits the file by hand is found out, and what was edited is named.
func TestEditedByHand(t *testing.T) {
	for name, c := range map[string]struct {
		do   []string
		want []string // record, and how the fault begins
	}{
		"nothing":                  {nil, nil},
		"a body":                   {[]string{`UPDATE records SET body = CAST('{"value":9}' AS BLOB) WHERE id = 'r3'`}, []string{"r3 was edited:"}},
		"one letter":               {[]string{`UPDATE records SET author = 'mara' WHERE id = 'r1'`}, []string{"r1 was edited:"}},
		"a time":                   {[]string{`UPDATE records SET made = 'yesterday' WHERE id = 'r2'`}, []string{"r2 was edited:"}},
		"an id":                    {[]string{`UPDATE records SET id = 'r9' WHERE id = 'r2'`}, []string{"r9 was edited:"}},
		"the subject":              {[]string{`UPDATE records SET subject_key = 'GL-02' WHERE id = 'r4'`}, []string{"r4 was edited:"}},
		"a number for a text":      {[]string{`UPDATE records SET why = 7, body = 8 WHERE id = 'r4'`}, []string{"r4 was edited:"}},
		"one removed":              {[]string{`DELETE FROM records WHERE id = 'r2'`}, []string{" the record at place 2 was removed"}},
		"the last removed":         {[]string{`DELETE FROM records WHERE id = 'r5'`}, []string{" the record at place 5 was removed"}},
		"all removed":              {[]string{`DELETE FROM records`}, []string{" the records at places 1 to 5 were removed"}},
		"the last and the note":    {[]string{`DELETE FROM records WHERE id = 'r5'`, `DELETE FROM chain`}, []string{" the note of the last record was removed"}},
		"removed, the rest closed": {[]string{`DELETE FROM records WHERE id = 'r4'`, `UPDATE records SET seq = 4 WHERE id = 'r5'`}, []string{"r5 was moved:", " the record at place 4 was removed"}},
		"two exchange places": {[]string{`UPDATE records SET seq = 0 WHERE id = 'r2'`, `UPDATE records SET seq = 2 WHERE id = 'r3'`, `UPDATE records SET seq = 3 WHERE id = 'r2'`},
			[]string{"r3 was moved:", "r2 was moved:"}},
		"one put in between": {[]string{`UPDATE records SET seq = seq + 1000 WHERE seq > 2`, `UPDATE records SET seq = seq - 999 WHERE seq > 2`,
			`INSERT INTO records SELECT 3, 'x', kind, subject_kind, subject_key, body, author, why, made, corrects, hash, 'abcd' FROM records WHERE id = 'r2'`},
			[]string{"x was put in:", "r3 was moved:", "r4 was moved:", "r5 was moved:"}},
		"one put at the end": {[]string{`INSERT INTO records SELECT 6, 'x', kind, subject_kind, subject_key, body, author, why, made, corrects, hash, 'abcd' FROM records WHERE id = 'r5'`},
			[]string{"x was put in:"}},
		"a place that is none": {[]string{`UPDATE records SET seq = 'first' WHERE id = 'r2'`}, []string{"r2 was"}},
	} {
		s := opened(t, t.TempDir())
		fill(t, s)
		for _, q := range c.do {
			if _, err := s.writer.Exec(q); err != nil {
				t.Fatal(name, err)
			}
		}
		faults, err := s.Verify(t.Context())
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		ok := len(faults) == len(c.want)
		for i, f := range faults {
			ok = ok && strings.HasPrefix(f.Record+" "+f.Text, c.want[i])
		}
		if !ok {
			t.Errorf("%s:\n got %+v\nwant %q", name, faults, c.want)
		}
	}
}
