package job

import (
	"encoding/json"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// object is a piece of JSON Schema.
type object = map[string]any

// Schema is the JSON Schema (draft 2020-12) of a layer, for editors that complete and check
// YAML. It follows from the tables that the files are read by. It knows keys, and the forms
// of values; whether a cart makes sense only reading it can tell. Parts may have any rating
// of their kind, and `kinds` are not described.
func Schema() []byte {
	var sorts []any
	for _, h := range headers {
		sorts = append(sorts, layerSchema(h))
	}
	doc := object{
		"$schema":     "https://json-schema.org/draft/2020-12/schema",
		"title":       "lugwright layer, format 1",
		"description": "A job, platform, kit, add-on, shop or catalogue of lugwright. Every value is taken as it is written.",
		"type":        "object",
		"oneOf":       sorts,
		"$defs":       object{"text": textSchema, "quantity": quantitySchema, "count": countSchema, "truth": truthSchema},
	}
	out, err := json.MarshalIndent(doc, "", "  ")
	if err != nil {
		panic("job: " + err.Error()) // texts, lists and maps of them
	}
	return append(out, '\n')
}

var (
	textSchema  = object{"type": []any{"string", "number", "boolean"}}
	countSchema = object{"anyOf": []any{object{"type": "integer", "minimum": 0}, object{"type": "string", "pattern": "^[0-9]+$"}}}
	truthSchema = object{"anyOf": []any{object{"type": "boolean"}, object{"enum": []any{"true", "false", "yes", "no"}}}}
	// a number with a unit behind it; units themselves are left to the reader
	quantitySchema = object{"type": "string", "pattern": "^(unknown|none|auto|(about )?[-+\u2212]?[0-9].*[A-Za-z%\"'\u2033\u2032\u03a9\u00b0\u00b2]2?)$"}
)

func ref(name string) object { return object{"$ref": "#/$defs/" + name} }

// layerSchema is one sort of layer: its header, and the keys that it takes.
func layerSchema(sort wiring.LayerKind) object {
	o := layerKeys.schema(sort)
	properties := o["properties"].(object)
	properties[string(sort)] = ref("text")
	properties["format"] = ref("count")
	o["required"] = []any{string(sort)}
	return o
}

// schema is a map of the table's keys and of keys of the user's own.
func (t table) schema(in wiring.LayerKind) object {
	properties := object{}
	for _, k := range t {
		if !k.allowed(in) {
			continue
		}
		value := k.schema()
		described := object{"description": k.Doc}
		for name, part := range value {
			described[name] = part
		}
		properties[k.Name] = described
		if k.Name == "colour" {
			properties["color"] = described
		}
	}
	return object{
		"type": "object", "properties": properties,
		"patternProperties": object{"^x-": object{}}, "additionalProperties": false,
	}
}

// entryTables are the keys that hold a map of entries with a table of their own.
var entryTables = map[string]table{
	"wires": wireKeys, "as-built": wireKeys, "places": placeKeys, "runs": runKeys, "looms": loomKeys, "revisions": revisionKeys,
}

// singleTables are the keys that hold one map with a table of its own.
var singleTables = map[string]table{"interlock": interlockKeys, "limits": limitKeys, "assume": assumeKeys}

// schema is what the value of a key looks like.
func (k key) schema() object {
	if t, ok := entryTables[k.Name]; ok && strings.HasPrefix(k.Shape, "map") {
		return object{"type": "object", "additionalProperties": t.schema("")}
	}
	if t, ok := singleTables[k.Name]; ok && strings.HasPrefix(k.Shape, "map") {
		return t.schema("")
	}
	switch {
	case k.Name == "extend":
		one := extendKeys.schema("")
		return object{"anyOf": []any{one, object{"type": "array", "items": one}}}
	case k.Name == "use":
		return object{"type": "array", "items": object{"anyOf": []any{ref("text"), useKeys.schema("")}}}
	case k.Name == "parts":
		return object{"type": "object", "additionalProperties": partSchema()}
	case k.Name == "waivers":
		return object{"type": "array", "items": waiverKeys.schema("")}
	case strings.HasPrefix(k.Shape, "map"):
		return object{"type": "object"}
	case strings.HasPrefix(k.Shape, "list"):
		return object{"type": "array"}
	}
	return ref(scalarOf(k.Shape))
}

// partSchema leaves ratings open: they belong to the kind.
func partSchema() object {
	o := partKeys.schema("")
	delete(o, "patternProperties")
	o["additionalProperties"] = object{}
	return o
}

// scalarOf is the definition that a shape of one value stands for.
func scalarOf(shape string) string {
	first, _, _ := strings.Cut(shape, ",")
	switch first {
	case "length", "temperature", "voltage", "current", "share", "conductor size", "conductor size or auto":
		return "quantity"
	case "count":
		return "count"
	case "true or false":
		return "truth"
	}
	return "text"
}
