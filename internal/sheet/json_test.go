package sheet

import (
	"testing"

	"levigate"
)

func TestJSON(t *testing.T) {
	d, err := JSON([]byte(`{"levigate":"formula/1","code":"T-1","product":"bath","use":{"eye":true},
		"lines":[{"phase":"A","material":"Glycerin","percent":26.50},{"material":"Oat é","percent":"3,5"},{"material":"Aqua","qs":true},{}],
		"materials":[{"name":"Oat é","composition":[{"inci":"Avena Sativa Kernel Flour","percent":100}],"water":{"percent":12,"low":10,"high":14}}],
		"making":[{"step":1,"text":"Stir","minutes":10}]}`))
	if err != nil {
		t.Fatal(err)
	}
	s := Read(d)
	s.Resolve(shelf)
	if len(s.Problems) > 0 || len(s.Formula.Lines) != 3 || s.Formula.Lines[2].Percent.String() != "70" || len(s.Formula.Materials) != 1 || !s.Formula.Use.Eye {
		t.Errorf("%v %+v", s.Problems, s.Formula)
	}
	if d.Lines[0].Cells["percent"] != "26.50" {
		t.Errorf("digits were changed: %v", d.Lines[0].Cells)
	}
	if d, err = JSON([]byte(`{"document":{"head":{"code":"X"},"lines":[],"making":[]}}`)); err != nil || d.Head["code"] != "X" {
		t.Error(d, err)
	}
	for _, body := range []string{"", "[]", "null", `{}`, `{"levigate":"formula/2"}`, `{"levigate":"formula/1","colour":"grey"}`,
		`{"levigate":"formula/1","lines":[{"percent":[1]}]}`, `{"document":{"heads":{}}}`, `{"document":{},"code":"X"}`, `{"levigate":"formula/1"} {}`} {
		if _, err := JSON([]byte(body)); levigate.CodeOf(err) != levigate.Invalid {
			t.Errorf("%s: %v", body, err)
		}
	}
}

func FuzzJSON(f *testing.F) {
	f.Add([]byte(`{"levigate":"formula/1","lines":[{"material":"Aqua","qs":true}],"materials":[{"name":"A"}]}`))
	f.Add([]byte(`{"document":{"head":{"code":"X"},"lines":[{"id":"a","cells":{"percent":"1,5"}}],"making":[],"own":"- name: A"}}`))
	f.Fuzz(func(t *testing.T, body []byte) {
		d, err := JSON(body)
		if err != nil {
			return
		}
		s := Read(d)
		s.Resolve(shelf)
		if len(s.Rows) != len(s.Formula.Lines) {
			t.Errorf("%d rows, %d lines", len(s.Rows), len(s.Formula.Lines))
		}
	})
}
