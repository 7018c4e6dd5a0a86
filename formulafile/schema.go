package formulafile

import (
	"bytes"
	_ "embed"
)

//go:embed schema.json
var schema []byte

// Schema is the JSON Schema (2020-12) of the formula file, for editors and
// other programs. The reader is stricter; what it accepts the schema accepts.
func Schema() []byte { return bytes.Clone(schema) }
