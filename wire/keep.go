package wire

import (
	"encoding/json"
	"time"

	"levigate"
)

// MaterialShown is a raw material in a list of what a name may mean.
type MaterialShown struct {
	Code   string   `json:"code"`
	Name   string   `json:"name"`
	INCI   []string `json:"inci"`
	Water  float64  `json:"water"` // as delivered, g per 100 g
	Role   []string `json:"role"`
	Origin string   `json:"origin"`
	Form   string   `json:"form"`
}

// MaterialList is what a text may mean, best first.
type MaterialList struct {
	Materials []MaterialShown `json:"materials"`
}

// MaterialsOf turns raw materials into JSON's shape.
func MaterialsOf(found []*levigate.Material) MaterialList {
	return MaterialList{each(found, func(m **levigate.Material) MaterialShown {
		return MaterialShown{Code: (*m).Code, Name: (*m).Name, INCI: INCIOf(*m), Water: (*m).Water.Typical,
			Role: list((*m).Role), Origin: string((*m).Origin), Form: string((*m).Form)}
	})}
}

// INCIOf lists the names a raw material is declared by.
func INCIOf(m *levigate.Material) []string {
	out := make([]string, len(m.Declared))
	for i := range m.Declared {
		out[i] = m.Declared[i].INCI
	}
	return out
}

// Explanation is what a figure, method, rule, table, substance or raw material
// is.
type Explanation struct {
	ID       string        `json:"id"`
	Title    string        `json:"title"`
	Kind     string        `json:"kind"`
	Sections []Explanatory `json:"sections"`
}

// Explanatory is one section: prose, a list or a table under a heading.
type Explanatory struct {
	Head  string   `json:"head"`
	Text  string   `json:"text"`
	Items []string `json:"items"`
	Table *Table   `json:"table,omitempty"`
}

// NewVersion asks to freeze a draft.
type NewVersion struct {
	ID     string `json:"id" minLength:"8" maxLength:"64" pattern:"^[A-Za-z0-9-]+$"`
	Reason string `json:"reason" minLength:"1" maxLength:"2000"`
	By     string `json:"by" minLength:"1" maxLength:"200"`
}

// VersionInfo is a version in a list.
type VersionInfo struct {
	ID       string    `json:"id"`
	Draft    string    `json:"draft"`
	Number   int       `json:"number"`
	Revision int64     `json:"revision"`
	Reason   string    `json:"reason"`
	By       string    `json:"by"`
	At       time.Time `json:"at"`
	Program  string    `json:"program"`
	Refdata  string    `json:"refdata"`
}

// VersionMade is the answer to NewVersion.
type VersionMade struct {
	Version VersionInfo `json:"version"`
}

// VersionList lists the versions of a draft.
type VersionList struct {
	Versions []VersionInfo `json:"versions"`
}

// Version is a frozen formula: what was typed, the raw materials by revision,
// and the check of its day as it was kept.
type Version struct {
	VersionInfo
	Document  levigate.Document          `json:"document"`
	Materials map[string]json.RawMessage `json:"materials"`
	Check     json.RawMessage            `json:"check"`
}

// VersionOpened is the answer to a version's address.
type VersionOpened struct {
	Version Version `json:"version"`
}

// VersionInfoOf turns a version into JSON's shape.
func VersionInfoOf(v *levigate.Version) VersionInfo {
	return VersionInfo{v.ID, v.Draft, v.Number, v.Revision, v.Reason, v.By, v.At, v.Program, v.Refdata}
}

// VersionsOf turns the list into JSON's shape.
func VersionsOf(list []levigate.Version) VersionList { return VersionList{each(list, VersionInfoOf)} }

// VersionOf turns a whole version into JSON's shape.
func VersionOf(v *levigate.Version) Version {
	out := Version{VersionInfoOf(v), DocumentOf(v.Document), v.Materials, v.Check}
	if out.Materials == nil {
		out.Materials = map[string]json.RawMessage{}
	}
	return out
}

// Subject is what a reading was taken of.
type Subject struct {
	Kind string `json:"kind" enum:"material,lot,version,batch,pack,balance,stirrer"`
	Key  string `json:"key" minLength:"1" maxLength:"200" doc:"A raw material's name or code; a formula's code"`
}

// NewReading is a measurement to keep.
type NewReading struct {
	ID          string   `json:"id" minLength:"8" maxLength:"64" pattern:"^[A-Za-z0-9-]+$"`
	Subject     Subject  `json:"subject"`
	Property    string   `json:"property" minLength:"1" maxLength:"100"`
	Value       float64  `json:"value"`
	Plus        float64  `json:"plus,omitempty" doc:"Half-width of the 90 % range; 0 when not stated"`
	Unit        string   `json:"unit" maxLength:"20"`
	Instrument  string   `json:"instrument,omitempty" maxLength:"200"`
	Temperature *float64 `json:"temperature,omitempty" doc:"°C; taken in the room when left out"`
	By          string   `json:"by" minLength:"1" maxLength:"200"`
	Why         string   `json:"why,omitempty" maxLength:"2000"`
}

// ReadingKept is a reading as it was kept, with its place in the chain of
// records.
type ReadingKept struct {
	ID          string    `json:"id"`
	Subject     Subject   `json:"subject"`
	Property    string    `json:"property"`
	Value       float64   `json:"value"`
	Plus        float64   `json:"plus"`
	Unit        string    `json:"unit"`
	Instrument  string    `json:"instrument"`
	Temperature *float64  `json:"temperature"`
	By          string    `json:"by"`
	Why         string    `json:"why"`
	At          time.Time `json:"at"`
	Seq         int64     `json:"seq"`
	Hash        string    `json:"hash"`
}

// ReadingMade is the answer to NewReading.
type ReadingMade struct {
	Record ReadingKept `json:"record"`
}

// ReadingList lists the readings of a subject.
type ReadingList struct {
	Readings []ReadingKept `json:"readings"`
}

// ReadingBody is what of a reading is kept and hashed.
type ReadingBody struct {
	Property    string   `json:"property"`
	Value       float64  `json:"value"`
	Plus        float64  `json:"plus"`
	Unit        string   `json:"unit"`
	Instrument  string   `json:"instrument"`
	Temperature *float64 `json:"temperature"`
}

// ReadingOf turns a record of a reading into JSON's shape.
func ReadingOf(r *levigate.Record) (ReadingKept, error) {
	var b ReadingBody
	if err := json.Unmarshal(r.Body, &b); err != nil {
		return ReadingKept{}, err
	}
	return ReadingKept{ID: r.ID, Subject: Subject{r.Subject.Kind, r.Subject.Key}, Property: b.Property, Value: b.Value, Plus: b.Plus,
		Unit: b.Unit, Instrument: b.Instrument, Temperature: b.Temperature, By: r.By, Why: r.Why, At: r.At, Seq: r.Seq, Hash: r.Hash}, nil
}
