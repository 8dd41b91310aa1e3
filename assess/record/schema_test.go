package record_test

import (
	"bytes"
	"os"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v4"

	"underfoot/assess/message"
	"underfoot/assess/record"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := record.JSONSchema(values(), message.English())
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("record.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("record.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// asEditor is a record as an editor sees it: YAML 1.2 without days.
func asEditor(t *testing.T, data []byte) any {
	t.Helper()
	var n yaml.Node
	if err := yaml.Load(data, &n); err != nil {
		t.Fatal(err)
	}
	return value(&n)
}

func value(n *yaml.Node) any {
	switch {
	case n.Kind == yaml.DocumentNode:
		return value(n.Content[0])
	case n.Kind == yaml.MappingNode:
		out := map[string]any{}
		for i := 0; i < len(n.Content); i += 2 {
			out[n.Content[i].Value] = value(n.Content[i+1])
		}
		return out
	case n.Kind == yaml.SequenceNode:
		out := []any{}
		for _, c := range n.Content {
			out = append(out, value(c))
		}
		return out
	case n.Tag == "!!timestamp":
		return n.Value
	}
	var v any
	if err := n.Decode(&v); err != nil {
		return n.Value
	}
	return v
}

// TestSchemaTakesRecords: what Read takes, the schema takes.
func TestSchemaTakesRecords(t *testing.T) {
	schema := compiled(t)
	for _, path := range cases(t) {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(asEditor(t, data)); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	if err := schema.Validate(asEditor(t, []byte(kitchen))); err != nil {
		t.Error(err)
	}
}

// TestSchemaRefuses: what an editor can see to be wrong, it marks.
func TestSchemaRefuses(t *testing.T) {
	schema := compiled(t)
	for name, text := range map[string]string{
		"no format":    "region: us\n",
		"region":       "format: underfoot.assessment/1\nregion: usa\n",
		"choice":       "format: underfoot.assessment/1\nanswers: {site.tenure: landlord}\n",
		"no value":     "format: underfoot.assessment/1\nanswers: {site.tenure: {basis: told}}\n",
		"basis":        "format: underfoot.assessment/1\nanswers: {site.tenure: {value: owner, basis: guessed}}\n",
		"id":           "format: underfoot.assessment/1\nareas: [{id: Big Hall}]\n",
		"family":       "format: underfoot.assessment/1\nareas: [{id: hall, zones: [{id: main, answers: {danger: all}}]}]\n",
		"list":         "format: underfoot.assessment/1\nareas: [{id: hall, zones: [{id: main, layer: cork}]}]\n",
		"quantity":     "format: underfoot.assessment/1\nareas: [{id: hall, answers: {tile.long_edge: [1, 2]}}]\n",
		"item's value": "format: underfoot.assessment/1\nareas: [{id: hall, zones: [{id: main, layer: {items: [{id: l1, layer.kind: lino}]}}]}]\n",
	} {
		if err := schema.Validate(asEditor(t, []byte(text))); err == nil {
			t.Errorf("%s: not marked", name)
		}
	}
}

// TestSchemaIsStable: the same catalogue gives the same bytes.
func TestSchemaIsStable(t *testing.T) {
	a, _ := record.JSONSchema(values(), message.English())
	b, _ := record.JSONSchema(values(), message.English())
	if !bytes.Equal(a, b) {
		t.Error("two runs differ")
	}
}
