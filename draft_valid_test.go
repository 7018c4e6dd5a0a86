package levigate

import "testing"

func TestValid(t *testing.T) {
	good := doc()
	if err := good.Valid(); err != nil {
		t.Fatal(err)
	}
	if err := (&Document{}).Valid(); err != nil {
		t.Errorf("an empty document: %v", err)
	}
	for name, bad := range map[string]Document{
		"an unknown head":  {Head: map[string]string{"colour": "red"}},
		"an unknown cell":  {Lines: []Row{{"a", map[string]string{"colour": "red"}}}},
		"a step's cell":    {Lines: []Row{{"a", map[string]string{"minutes": "5"}}}},
		"a row without id": {Making: []Row{{"", nil}}},
		"two of one id":    {Lines: []Row{{"a", nil}, {"a", nil}}},
		"a cell too long":  {Head: map[string]string{"notes": string(make([]byte, MostCell+1))}},
		"no text":          {Head: map[string]string{"notes": "\xff"}},
		"too many rows":    {Lines: make([]Row, MostRows+1)},
	} {
		if err := bad.Valid(); CodeOf(err) != Invalid {
			t.Errorf("%s: %v", name, err)
		}
	}
	d := doc()
	if _, _, err := d.Apply(&Command{Changes: []Change{{Do: Set, List: "head", Field: "notes", To: "\xc3("}}}); CodeOf(err) != Invalid {
		t.Errorf("bytes that are no text were taken: %v", err)
	}
}
