package record

import (
	"encoding/json"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// object is a piece of a JSON Schema. Keys come out in alphabetical order, so
// the same catalogue gives the same bytes.
type object = map[string]any

// JSONSchema is the draft-07 schema of a record, titled in a language, by which an editor completes
// keys and choices. It is as open as Read is: unknown keys are allowed, and
// what a text must look like is left to Read.
func JSONSchema(v Values, l *message.Language) ([]byte, error) {
	s := &schemaMaker{schema: v.Schema()}
	root := s.record()
	root["$schema"] = "http://json-schema.org/draft-07/schema#"
	root["title"] = l.Text("record/schema.title")
	root["definitions"] = object{"day": day(), "id": object{"type": "string", "pattern": kebab.String(), "maxLength": maxID}, "reply": replies()}
	out, err := json.MarshalIndent(root, "", "  ")
	return append(out, '\n'), err
}

type schemaMaker struct{ schema *schema.Schema }

func (s *schemaMaker) record() object {
	return mappingOf(object{
		"format":  object{"const": Format},
		"region":  object{"enum": figure.Regions},
		"units":   object{"enum": units},
		"visited": ref("day"),
		"answers": s.answers(schema.ScopeJob),
		"areas":   listOfThings(s.area()),
	}, "format")
}

func (s *schemaMaker) area() object {
	return mappingOf(object{
		"id":      ref("id"),
		"name":    object{"type": "string"},
		"answers": s.answers(schema.ScopeArea),
		"zones":   listOfThings(s.zone()),
	}, "id")
}

func (s *schemaMaker) zone() object {
	keys := object{"id": ref("id"), "answers": s.answers(schema.ScopeZone)}
	for _, list := range schema.ListScopes {
		keys[list.String()] = s.list(list)
	}
	return mappingOf(keys, "id")
}

func (s *schemaMaker) list(list schema.Scope) object {
	item := s.answers(list)
	item["properties"].(object)["id"] = ref("id")
	item["required"] = []string{"id"}
	return anyOf(object{"const": "none"}, mappingOf(object{
		"complete": answerOf(completeWords(s.schema, list)),
		"items":    listOfThings(item),
	}))
}

// answers are the answers that a thing of a scope may have.
func (s *schemaMaker) answers(scope schema.Scope) object {
	keys := object{}
	for i := range s.schema.All() {
		d := &s.schema.All()[i]
		if d.Scope != scope || d.Nature == schema.Derived || closes(d) {
			continue
		}
		keys[d.ID] = answerOf(d)
		if d.Family != "" {
			keys[d.Family] = answerOf(familyWords(d.Family))
		}
	}
	return mappingOf(keys)
}

// answerOf is one answer: a value, or a mapping of a value and what is known of it.
func answerOf(d *schema.Declaration) object {
	text := object{"type": "string"}
	value := anyOf(ref("reply"), valueOf(d))
	return anyOf(value, mappingOf(object{
		"value":  value,
		"basis":  object{"enum": assess.BasisWords()},
		"with":   text,
		"on":     ref("day"),
		"note":   text,
		"photos": anyOf(text, object{"type": "array", "items": text}),
	}, "value"))
}

func valueOf(d *schema.Declaration) object {
	switch d.Kind {
	case schema.KindQuantity:
		return object{"type": []string{"string", "number"}}
	case schema.KindText:
		return object{"type": "string"}
	}
	one := object{"enum": d.Choices}
	alternatives := []any{one, object{"type": "array", "items": one, "minItems": 1}, object{"type": "string", "pattern": ","}}
	if d.Kind == schema.KindYesNo {
		alternatives = append(alternatives, object{"type": "boolean"})
	}
	return anyOf(alternatives...)
}

func replies() object {
	return object{"enum": []string{assess.NotSure.String(), assess.CouldNotSee.String(), assess.DoesNotApply.String()}}
}

func day() object { return object{"type": "string", "pattern": `^\d{4}-\d{2}-\d{2}$`} }

func ref(name string) object { return object{"$ref": "#/definitions/" + name} }

func anyOf(alternatives ...any) object { return object{"anyOf": alternatives} }

// mappingOf is a mapping with its known keys. A key may stand with nothing
// behind it where it need not be there at all.
func mappingOf(keys object, required ...string) object {
	m := object{"type": []string{"object", "null"}, "properties": keys}
	if len(required) > 0 {
		m["type"], m["required"] = "object", required
	}
	return m
}

func listOfThings(thing object) object {
	return object{"type": []string{"array", "null"}, "items": thing}
}
