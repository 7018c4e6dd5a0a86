package sheet

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"levigate"
	"levigate/formulafile"
)

// JSON reads a formula that another program sends to be checked: a document, or
// the formula file's keys in JSON, finished or not.
func JSON(body []byte) (*levigate.Document, error) {
	var keys map[string]json.RawMessage
	if err := json.Unmarshal(body, &keys); err != nil {
		return nil, notJSON(err)
	}
	if _, ok := keys["document"]; ok {
		var in struct {
			Document levigate.Document `json:"document"`
		}
		if err := strict(body, &in); err != nil {
			return nil, notJSON(err)
		}
		return &in.Document, nil
	}
	var f jsonFormula
	if err := strict(body, &f); err != nil {
		return nil, notJSON(err)
	}
	if f.Levigate != formulafile.Edition {
		return nil, &levigate.Error{Code: levigate.Invalid, Message: fmt.Sprintf("the formula is of edition %q", shown(string(f.Levigate))),
			Help: `begin it with "levigate": "` + formulafile.Edition + `", or send {"document": …}`}
	}
	return f.document()
}

// jsonFormula has the formula file's keys; everything written is a text or a
// number and kept as it was written.
type jsonFormula struct {
	Levigate text   `json:"levigate"`
	Code     text   `json:"code"`
	Name     text   `json:"name"`
	Product  text   `json:"product"`
	Batch    text   `json:"batch"`
	Markets  []text `json:"markets"`
	Claims   []text `json:"claims"`
	Use      struct {
		Area   []text `json:"area"`
		Eye    bool   `json:"eye"`
		Spray  bool   `json:"spray"`
		Under3 bool   `json:"under-3"`
	} `json:"use"`
	Pack  text `json:"pack"`
	Notes text `json:"notes"`
	Lines []struct {
		Phase    text `json:"phase"`
		Material text `json:"material"`
		Percent  text `json:"percent"`
		QS       bool `json:"qs"`
		Sits     text `json:"sits"`
	} `json:"lines"`
	Materials []any `json:"materials"`
	Making    []struct {
		Step        text `json:"step"`
		Phase       text `json:"phase"`
		Text        text `json:"text"`
		Temperature text `json:"temperature"`
		Minutes     text `json:"minutes"`
	} `json:"making"`
}

// text is a string, or a number with its digits as written.
type text string

// UnmarshalJSON takes both.
func (t *text) UnmarshalJSON(b []byte) error {
	var s string
	switch {
	case string(b) == "null":
	case len(b) > 0 && b[0] == '"':
		if err := json.Unmarshal(b, &s); err != nil {
			return err
		}
	case bytes.ContainsAny(b[:1], "-0123456789"):
		s = string(b)
	default:
		return errors.New("a text or a number is wanted")
	}
	*t = text(s)
	return nil
}

func (f *jsonFormula) document() (*levigate.Document, error) {
	d := &levigate.Document{Head: map[string]string{}, Lines: []levigate.Row{}, Making: []levigate.Row{}}
	put(d.Head, "code", string(f.Code), "name", string(f.Name), "product", string(f.Product), "batch", string(f.Batch),
		"markets", list(f.Markets), "claims", list(f.Claims), "area", list(f.Use.Area), "eye", yes(f.Use.Eye), "spray", yes(f.Use.Spray),
		"under-3", yes(f.Use.Under3), "pack", string(f.Pack), "notes", string(f.Notes))
	for i, l := range f.Lines {
		if l.QS {
			l.Percent = "qs"
		}
		row := levigate.Row{ID: "line-" + strconv.Itoa(i+1), Cells: map[string]string{}}
		put(row.Cells, "phase", string(l.Phase), "material", string(l.Material), "percent", string(l.Percent), "sits", string(l.Sits))
		d.Lines = append(d.Lines, row)
	}
	for i, s := range f.Making {
		row := levigate.Row{ID: "step-" + strconv.Itoa(i+1), Cells: map[string]string{}}
		put(row.Cells, "step", string(s.Step), "phase", string(s.Phase), "text", string(s.Text), "temperature", string(s.Temperature), "minutes", string(s.Minutes))
		d.Making = append(d.Making, row)
	}
	if len(f.Materials) > 0 {
		// JSON between brackets is a form of YAML that the file's reader takes.
		var b bytes.Buffer
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		if err := enc.Encode(f.Materials); err != nil {
			return nil, notJSON(err)
		}
		d.Own = strings.TrimSpace(b.String())
	}
	return d, nil
}

func list(words []text) string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(w)
	}
	return strings.Join(out, ", ")
}

// strict decodes one value and refuses keys nobody reads.
func strict(body []byte, to any) error {
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	d.UseNumber()
	if err := d.Decode(to); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		return errors.New("something stands behind the formula")
	}
	return nil
}

func notJSON(err error) error {
	said := strings.TrimPrefix(err.Error(), "json: ")
	if wrong, ok := errors.AsType[*json.UnmarshalTypeError](err); ok {
		where := "what was sent"
		if wrong.Field != "" {
			where = "the key " + wrong.Field
		}
		said = fmt.Sprintf("%s holds JSON of another kind (%s) than is wanted there", where, wrong.Value)
	}
	return &levigate.Error{Code: levigate.Invalid, Message: "the formula cannot be read: " + said, Cause: err,
		Help: `send a formula file's keys as JSON, or {"document": …}`}
}
