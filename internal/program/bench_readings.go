package program

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"levigate"
	"levigate/internal/assess"
	"levigate/internal/assess/part"
	"levigate/internal/assess/structure"
	"levigate/quantity"
	"levigate/wire"
)

// readingKind is the kind of record a reading is kept as.
const readingKind = "reading"

// AddReading keeps a reading. From then on it is in force in every check of its
// subject.
func (b *Bench) AddReading(ctx context.Context, n *wire.NewReading) (*wire.ReadingKept, error) {
	body := wire.ReadingBody{Property: n.Property, Value: n.Value, Plus: n.Plus, Unit: strings.TrimSpace(n.Unit), Instrument: n.Instrument, Temperature: n.Temperature}
	subject := b.subject(n.Subject.Kind, n.Subject.Key)
	if subject.Key == "" {
		return nil, invalid("the reading names nothing it was taken of", "name the raw material, or the formula's code")
	}
	if _, err := readingOf(n.ID, subject, &body); err != nil {
		return nil, err
	}
	r := &levigate.Record{ID: n.ID, Kind: readingKind, Subject: subject, By: n.By, Why: n.Why, At: b.program.Clock()}
	var err error
	if r.Body, err = json.Marshal(body); err != nil {
		return nil, err
	}
	err = b.store.AddRecord(ctx, r)
	b.readings.forget()
	if err != nil {
		return nil, err
	}
	out, err := wire.ReadingOf(r)
	return &out, err
}

// Readings lists the readings of a subject.
func (b *Bench) Readings(ctx context.Context, kind, key string) (wire.ReadingList, error) {
	out := wire.ReadingList{Readings: []wire.ReadingKept{}}
	records, err := b.store.RecordsOf(ctx, b.subject(kind, key))
	for i := range records {
		if records[i].Kind != readingKind {
			continue
		}
		r, err := wire.ReadingOf(&records[i])
		if err != nil {
			return out, err
		}
		out.Readings = append(out.Readings, r)
	}
	return out, err
}

// subject gives a raw material the one name its readings are kept under, by
// whichever it was called.
func (b *Bench) subject(kind, key string) levigate.Subject {
	s := levigate.Subject{Kind: kind, Key: strings.TrimSpace(key)}
	if kind == "material" {
		if m := b.lib.Find(s.Key, nil).Material; m != nil {
			s.Key = keyOf(m)
		}
	}
	return s
}

func keyOf(m *levigate.Material) string {
	if m.Code != "" {
		return m.Code
	}
	return m.Name
}

// readingOf takes a reading as it was typed to what the calculation uses, or
// says why it cannot be one.
func readingOf(id string, subject levigate.Subject, r *wire.ReadingBody) (levigate.Reading, error) {
	out := levigate.Reading{ID: id, Subject: subject, Property: r.Property, Instrument: r.Instrument}
	unit, low, high, err := measured(subject.Kind, r.Property)
	if err != nil {
		return out, err
	}
	if r.Plus < 0 {
		return out, invalid("plus is "+quantity.Significant(r.Plus, 4)+"; a half-width is zero or more", "leave it out when it was not stated")
	}
	if out.Value, err = in(r.Value, r.Unit, unit); err != nil {
		return out, err
	}
	if out.Plus, err = in(r.Plus, r.Unit, unit); err != nil {
		return out, err
	}
	out.Unit = unit
	if !(out.Value >= low && out.Value <= high) {
		return out, invalid(fmt.Sprintf("%s is %s %s, which cannot be", r.Property, quantity.Significant(out.Value, 4), unit), "see whether the number and its unit are right")
	}
	if t := r.Temperature; t != nil {
		if !(*t >= -50 && *t <= 150) {
			return out, invalid("a reading at "+quantity.Significant(*t, 4)+" °C cannot be", "write the temperature it was taken at, in °C")
		}
		out.Conditions.Temperature = *t
	}
	return out, nil
}

// in converts a number from the unit it was written in.
func in(v float64, unit string, want quantity.Unit) (float64, error) {
	if quantity.Unit(unit) == want || unit == "" || want == "" {
		return v, nil
	}
	got, err := quantity.ParseIn(strconv.FormatFloat(v, 'g', -1, 64)+" "+unit, want)
	if err != nil {
		return 0, &levigate.Error{Code: levigate.Invalid, Message: "unit: " + err.Error(), Help: "write the value in " + string(want), Cause: err}
	}
	return got, nil
}

// measured says in which unit a property is read and between what it may lie.
func measured(kind, property string) (unit quantity.Unit, low, high float64, err error) {
	any := math.MaxFloat64
	switch {
	case kind == "material" || kind == "lot":
		switch property {
		case part.PropertyWater:
			return quantity.Percent, 0, 100, nil
		case part.PropertyDensity:
			return quantity.GramPerML, 0.1, 20, nil
		}
		return "", 0, 0, invalid("a raw material has no reading of "+quoted(property), "water and density are read of raw materials")
	case kind == "version" && property == structure.PoursAt:
		return quantity.GramPer100g, 0, 1000, nil
	case kind == "version":
		f := specimens()[property]
		if f == nil {
			var ids []string
			for _, p := range assess.Parts() {
				ids = append(ids, assess.Gives(p)...)
			}
			return "", 0, 0, invalid("a formula has no figure "+quoted(property), meant(property, ids, "name a figure of the formula check, like water.activity"))
		}
		if f.Unit == quantity.One && strings.HasPrefix(property, "water.") {
			return f.Unit, 0, 1, nil
		}
		return f.Unit, -any, any, nil
	}
	return "", -any, any, nil // of a pack or a balance; no check uses them yet
}

// readings remembers what is in force for each subject, so that a keystroke
// does not ask the store for every line.
type readings struct {
	mu   sync.Mutex
	made int // rises whenever a reading is kept
	of   map[levigate.Subject][]levigate.Reading
}

func (r *readings) forget() {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.made++
	r.of = nil
}

// inForce lists the readings of a formula and of its raw materials.
func (b *Bench) inForce(ctx context.Context, f *levigate.Formula) ([]levigate.Reading, error) {
	var out []levigate.Reading
	var asked []levigate.Subject
	add := func(kind, key string) error {
		s := levigate.Subject{Kind: kind, Key: key}
		if key == "" || slices.Contains(asked, s) {
			return nil
		}
		asked = append(asked, s)
		found, err := b.inForceOf(ctx, s)
		out = append(out, found...)
		return err
	}
	if err := add("version", f.Code); err != nil {
		return nil, err
	}
	for i := range f.Lines {
		if m := f.Lines[i].Match.Material; m != nil {
			for _, key := range []string{m.Code, m.Name} {
				if err := add("material", key); err != nil {
					return nil, err
				}
			}
		}
	}
	return out, nil
}

func (b *Bench) inForceOf(ctx context.Context, s levigate.Subject) ([]levigate.Reading, error) {
	r := &b.readings
	r.mu.Lock()
	made := r.made
	found, known := r.of[s]
	r.mu.Unlock()
	if known {
		return found, nil
	}
	records, err := b.store.RecordsOf(ctx, s)
	if err != nil {
		return nil, err
	}
	found = standing(records)
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.made == made { // nothing was kept meanwhile
		if r.of == nil || len(r.of) >= mostMisses {
			r.of = map[levigate.Subject][]levigate.Reading{}
		}
		r.of[s] = found
	}
	return found, nil
}

// standing are the readings among some records that no later one corrects.
func standing(records []levigate.Record) []levigate.Reading {
	corrected := map[string]bool{}
	for i := range records {
		corrected[records[i].Corrects] = true
	}
	var out []levigate.Reading
	for i := range records {
		rec := &records[i]
		if rec.Kind != readingKind || corrected[rec.ID] {
			continue
		}
		var body wire.ReadingBody
		if json.Unmarshal(rec.Body, &body) != nil {
			continue // verify names a record that was spoiled
		}
		if r, err := readingOf(rec.ID, rec.Subject, &body); err == nil {
			r.At, r.By = rec.At, rec.By
			out = append(out, r)
		}
	}
	return out
}
