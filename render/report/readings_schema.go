package report

import (
	_ "embed"
	"slices"
)

var (
	//go:embed readings.schema.json
	readingsSchema []byte
	//go:embed trace.schema.json
	traceSchema []byte
)

// ReadingsSchema returns the JSON Schema (draft 2020-12) of what [ReadingsJSON] writes.
func ReadingsSchema() []byte { return slices.Clone(readingsSchema) }

// TraceSchema returns the JSON Schema (draft 2020-12) of what [TraceJSON] writes.
func TraceSchema() []byte { return slices.Clone(traceSchema) }
