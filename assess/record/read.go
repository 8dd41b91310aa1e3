package record

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// units are the words that a header may use for the system of units.
var units = []string{quantity.US.String(), quantity.Metric.String()}

// The keys of each place, in the order in which they are written.
var (
	topKeys    = []string{"format", "region", "units", "visited", "answers", "areas"}
	areaKeys   = []string{"id", "name", "answers", "zones"}
	zoneKeys   = append([]string{"id", "answers"}, listKeys()...)
	listFields = []string{"complete", "items"}
	answerKeys = []string{"value", "basis", "with", "on", "note", "photos"}
)

func listKeys() []string {
	var keys []string
	for _, s := range schema.ListScopes {
		keys = append(keys, s.String())
	}
	return keys
}

// Read reads a record, YAML or JSON. The name stands in the places of
// problems. All problems come back at once as assess.Problems, and then there
// is no document: a record that is half understood advises nobody.
func Read(data []byte, name string, v Values) (*Document, error) {
	r := &reader{ledger: ledger{name: name, data: data}, values: v, job: &assess.Job{}}
	tree := r.tree()
	if tree != nil && r.format(tree.Content[0]) {
		r.record(tree.Content[0])
	}
	if err := r.problems().Err(); err != nil {
		return nil, err
	}
	return &Document{values: v, source: slices.Clone(data), tree: tree, was: r.job, job: r.job, warnings: r.odd.problems()}, nil
}

// A reader walks the tree of one record.
type reader struct {
	ledger
	odd    ledger // warnings
	values Values
	job    *assess.Job
	sys    quantity.System
}

// tree is the screened document node, or nil where it is not fit to be read.
func (r *reader) tree() *yaml.Node {
	r.odd = ledger{name: r.name, data: r.data}
	if r.screenBytes(); len(r.found) > 0 {
		return nil
	}
	tree := r.parse()
	if tree == nil || !r.screenTree(tree.Content[0], 0) {
		return nil
	}
	return tree
}

// format reports whether the record is of the format that is read here. A
// newer one is left alone: no other problem in it is any of our business.
func (r *reader) format(root *yaml.Node) bool {
	n := child(root, "format")
	family, version, _ := strings.Cut(Format, "/")
	switch {
	case root.Kind != yaml.MappingNode || n == nil:
		r.found = nil
		r.note(at(root), message.New("record/format.missing"), message.New("record/format.first", "format", Format))
	case n.Value == Format:
		return true
	case strings.HasPrefix(n.Value, family+"/") && newer(n.Value[len(family)+1:], version):
		r.found = nil
		r.note(at(n), message.New("record/format.newer", "format", n.Value, "ours", Format),
			message.New("record/format.update"))
	default:
		r.found = nil
		r.note(at(n), message.New("record/format.unknown", "format", strconv.Quote(n.Value), "ours", Format),
			message.New("record/format.write", "format", Format))
	}
	return false
}

func newer(version, than string) bool {
	v, err := strconv.Atoi(version)
	ours, _ := strconv.Atoi(than)
	return err == nil && v > ours
}

func (r *reader) record(root *yaml.Node) {
	top := r.fields(root, message.New("record/part.record"), topKeys)
	r.job.Region = r.word(top["region"], "region", figure.Regions)
	r.job.Units = r.word(top["units"], "units", units)
	r.job.Visited = r.day(top["visited"])
	r.sys = system(r.job)
	r.job.Answers = r.answers(top["answers"], schema.ScopeJob)
	seen := map[string]bool{}
	for _, n := range r.sequence(top["areas"], "areas") {
		if id, ok := r.id(n, "area", seen); ok {
			r.job.Areas = append(r.job.Areas, r.area(n, id))
		}
	}
}

func (r *reader) area(n *yaml.Node, id string) assess.Area {
	f := r.fields(n, oneOf(schema.ScopeArea), areaKeys)
	area := assess.Area{ID: id, Name: r.text(f["name"], "name"), Answers: r.answers(f["answers"], schema.ScopeArea)}
	seen := map[string]bool{}
	for _, z := range r.sequence(f["zones"], "zones") {
		if id, ok := r.id(z, "zone", seen); ok {
			area.Zones = append(area.Zones, r.zone(z, id))
		}
	}
	return area
}

func (r *reader) zone(n *yaml.Node, id string) assess.Zone {
	f := r.fields(n, oneOf(schema.ScopeZone), zoneKeys)
	zone := assess.Zone{ID: id, Answers: r.answers(f["answers"], schema.ScopeZone)}
	for _, list := range schema.ListScopes {
		r.list(f[list.String()], list, &zone)
	}
	return zone
}

// fields are the values of the known keys of a mapping. An unknown key is a
// problem where it looks like a known one misspelt or cut short; else it is
// kept.
func (r *reader) fields(n *yaml.Node, of message.Message, known []string) map[string]*yaml.Node {
	if !r.mapping(n, of) {
		return nil
	}
	out := make(map[string]*yaml.Node, len(n.Content)/2)
	for _, p := range pairs(n) {
		switch {
		case !slices.Contains(known, p.key.Value):
			r.unknown(p.key, of, known)
		case isNull(p.value):
			r.odd.note(at(p.key), message.New("record/empty.key", "key", p.key.Value), noHint)
		case out[p.key.Value] == nil:
			out[p.key.Value] = p.value
		}
	}
	return out
}

func (r *reader) unknown(key *yaml.Node, of message.Message, known []string) {
	near := assess.Nearest(key.Value, known)
	if i := slices.IndexFunc(known, func(k string) bool { return strings.HasSuffix(k, "."+key.Value) }); i >= 0 {
		near = known[i]
	}
	if near != "" {
		r.note(at(key), message.New("record/unknown.what", "key", strconv.Quote(key.Value), "of", of), message.New("record/unknown.near", "key", near))
		return
	}
	r.odd.note(at(key), message.New("record/unknown.kept", "key", strconv.Quote(key.Value), "of", of), noHint)
}

func (r *reader) mapping(n *yaml.Node, of any) bool {
	if n.Kind != yaml.MappingNode {
		r.note(at(n), message.New("record/shape.mapping", "of", of), message.New("record/shape.pairs"))
	}
	return n.Kind == yaml.MappingNode
}

func (r *reader) sequence(n *yaml.Node, key string) []*yaml.Node {
	if n == nil {
		return nil
	}
	if n.Kind != yaml.SequenceNode {
		r.note(at(n), message.New("record/shape.list", "key", key), message.New("record/shape.dash"))
		return nil
	}
	return n.Content
}

// text is a plain text; empty where nothing is written.
func (r *reader) text(n *yaml.Node, key any) string {
	if n == nil {
		return ""
	}
	if n.Kind != yaml.ScalarNode {
		r.note(at(n), message.New("record/shape.text", "key", key), message.New("record/shape.quote"))
		return ""
	}
	return n.Value
}

// word is one of the words that a key takes.
func (r *reader) word(n *yaml.Node, key string, words []string) string {
	text := r.text(n, key)
	if text == "" || slices.Contains(words, text) {
		return text
	}
	r.note(at(n), message.New("record/header.word", "word", strconv.Quote(text), "key", key), assess.OneOf(text, words))
	return ""
}

func (r *reader) day(n *yaml.Node) assess.Day {
	text := r.text(n, message.New("record/part.day"))
	if text == "" {
		return ""
	}
	if !validDay(text) {
		r.note(at(n), message.New("record/header.day", "day", strconv.Quote(text)), message.New("record/header.write_day"))
		return ""
	}
	return assess.Day(text)
}

func validDay(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}
