package record

import (
	"encoding/json"
	"testing"

	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"
)

// TestScanJSONLikeYAML: the tree of a JSON text is that of the YAML parser,
// places included.
func TestScanJSONLikeYAML(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := map[string]any{}
		for range rapid.IntRange(0, 4).Draw(t, "keys") {
			v[someText(t)] = someValue(t, 3)
		}
		data, err := json.MarshalIndent(v, "", rapid.SampledFrom([]string{"", " "}).Draw(t, "indent"))
		if err != nil {
			t.Fatal(err)
		}
		var want yaml.Node
		if err := yaml.Load(data, &want); err != nil {
			t.Skip("a surrogate pair, which YAML does not know")
		}
		got := scanJSON(data)
		if got == nil {
			t.Fatalf("not scanned: %s", data)
		}
		compareTrees(t, got, &want)
	})
}

func someText(t *rapid.T) string {
	return rapid.SampledFrom([]string{"", "a", "größer", "two\nlines", "\"quoted\" \\ /", "12' 6\"", "null", "<&>", "漢"}).Draw(t, "text")
}

func someValue(t *rapid.T, depth int) any {
	switch rapid.IntRange(0, 2+2*min(depth, 1)).Draw(t, "kind") {
	case 0:
		return someText(t)
	case 1:
		return rapid.SampledFrom([]any{0, -3, 480, 1.5, -2e-9}).Draw(t, "number")
	case 2:
		return rapid.SampledFrom([]any{true, false, nil}).Draw(t, "word")
	case 3:
		list := []any{}
		for range rapid.IntRange(0, 3).Draw(t, "size") {
			list = append(list, someValue(t, depth-1))
		}
		return list
	}
	m := map[string]any{}
	for range rapid.IntRange(0, 3).Draw(t, "size") {
		m[someText(t)] = someValue(t, depth-1)
	}
	return m
}

func compareTrees(t *rapid.T, got, want *yaml.Node) {
	t.Helper()
	if got.Kind != want.Kind || got.Tag != want.Tag || got.Value != want.Value || got.Style != want.Style ||
		got.Line != want.Line || got.Column != want.Column || len(got.Content) != len(want.Content) {
		t.Fatalf("%+v, want %+v", got, want)
	}
	for i := range got.Content {
		compareTrees(t, got.Content[i], want.Content[i])
	}
}

// TestScanJSONLeavesTheRest: what is not JSON is left to the YAML parser.
func TestScanJSONLeavesTheRest(t *testing.T) {
	for _, text := range []string{"", "a: 1", "[1]", "{a: 1}", `{"a" 1}`, `{"a": 1,}`, `{"a": 01}`, `{"a": 1} x`, `{"a": "1}`, `{"a": 'x'}`,
		`{"a": "\q"}`, `{"a"`, `{"a":`, `{"a": [1 2]}`, "{\"a\": \"two\nlines\"}", `{"a": yes}`, "{\"a\": 1} # comment", `{"a": "x\`} {
		if n := scanJSON([]byte(text)); n != nil {
			t.Errorf("%q was scanned", text)
		}
	}
}
