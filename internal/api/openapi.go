package api

import (
	"bytes"
	"encoding/json"
	"net/http"
	"reflect"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"levigate/quantity"
	"levigate/wire"
)

// OpenAPI describes the programming interface, for docs/ and for whoever makes a
// client.
func OpenAPI() []byte { return specification((&Server{}).routes(http.NewServeMux())) }

func specification(o *huma.OpenAPI) []byte {
	b, err := o.MarshalJSON()
	var out bytes.Buffer
	if err == nil {
		err = json.Indent(&out, b, "", "  ")
	}
	if err != nil {
		panic("api: the interface does not marshal: " + err.Error()) // found by the first test
	}
	out.WriteByte('\n')
	return out.Bytes()
}

// optional is a number in the address that may be left out.
type optional struct {
	Value float64
	set   bool
}

// Schema says that it is a number.
func (optional) Schema(huma.Registry) *huma.Schema { return &huma.Schema{Type: huma.TypeNumber} }

// Receiver is where the number is put.
func (o *optional) Receiver() reflect.Value { return reflect.ValueOf(o).Elem().Field(0) }

// OnParamSet notes that it was there.
func (o *optional) OnParamSet(set bool, _ any) { o.set = set }

// describe adds what types alone do not say: what may be null, the two forms of
// a formula, and the stream of events.
func describe(o *huma.OpenAPI) {
	r := o.Components.Schemas
	for name := range r.Map() {
		nullable(r, name)
	}
	ref := func(name string) *huma.Schema { return &huma.Schema{Ref: "#/components/schemas/" + name} }
	r.Map()["Version"].Properties["check"] = ref("Check")
	r.Map()["Event"] = huma.SchemaFromType(r, reflect.TypeFor[wire.Event]())
	o.Paths["/api/assess"].Post.RequestBody.Content["application/json"].Schema = &huma.Schema{OneOf: []*huma.Schema{
		{Type: huma.TypeObject, Required: []string{"document"}, AdditionalProperties: false, Properties: map[string]*huma.Schema{"document": ref("Document")}},
		{Type: huma.TypeObject, Required: []string{"levigate"}, Description: "The keys of a formula file (formulafile/schema.json), finished or not; a percent may be a number or a text.",
			Properties: map[string]*huma.Schema{"levigate": {Type: huma.TypeString, Enum: []any{"formula/1"}}}, AdditionalProperties: true},
	}}
	o.AddOperation(&huma.Operation{OperationID: "events", Method: "GET", Path: "/api/events",
		Summary:   "A stream of server-sent events: event draft, with an Event as data, for every change",
		Responses: map[string]*huma.Response{"200": {Description: "The stream", Content: map[string]*huma.MediaType{"text/event-stream": {Schema: ref("Event")}}}}})
}

// nullable marks the groups that an answer may hold null in place of.
func nullable(r huma.Registry, name string) {
	t := r.TypeFromRef("#/components/schemas/" + name)
	if t == nil || t.Kind() != reflect.Struct {
		return
	}
	for i := range t.NumField() {
		f := t.Field(i)
		key, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		at := r.Map()[name].Properties
		if s := at[key]; f.Type.Kind() == reflect.Pointer && s != nil && s.Ref != "" && !strings.Contains(options, "omit") {
			at[key] = &huma.Schema{AnyOf: []*huma.Schema{{Ref: s.Ref}, {Type: "null"}}}
		}
	}
}

// exact numbers are written as JSON numbers.
func exact(r huma.Registry) {
	r.RegisterTypeAlias(reflect.TypeFor[quantity.Decimal](), reflect.TypeFor[float64]())
}
