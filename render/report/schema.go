package report

import (
	_ "embed"
	"slices"
)

//go:embed findings.schema.json
var schema []byte

// Schema returns the JSON Schema (draft 2020-12) of what [JSON] writes.
func Schema() []byte { return slices.Clone(schema) }
