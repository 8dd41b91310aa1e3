package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// schemaComment tells an editor where the JSON Schema of the record lies:
// beside the record.
const schemaComment = "# yaml-language-server: $schema=underfoot.schema.json\n"

// Bytes is the record as a file. What the program does not know and what
// nobody changed stays as it was written; known keys stand in the order of the
// catalogue. A record read from JSON is written as JSON. What comes out has
// been read back and says what the job says; anything else is an error of the
// kind Internal.
func (d *Document) Bytes() ([]byte, error) {
	if d.source != nil && !d.renamed && sameJob(d.job, d.was) {
		return bytes.Clone(d.source), nil
	}
	tree := copyTree(d.tree)
	w := &writer{schema: d.values.Schema(), root: tree.Content[0], was: d.was, job: d.job}
	w.record()
	out, err := dump(tree, json.Valid(d.source))
	if err != nil {
		return nil, &assess.Problem{Kind: assess.Internal, What: message.New("record/written.failed"), Cause: err}
	}
	back, err := Read(out, "written", d.values)
	if err == nil && !sameJob(back.job, d.job) {
		err = fmt.Errorf("it reads back as something else")
	}
	if err != nil {
		return nil, &assess.Problem{Kind: assess.Internal, What: message.New("record/written.wrongly", "why", message.Of(err)),
			Hint: message.New("record/written.hint"), Cause: err}
	}
	return out, nil
}

// A writer brings a tree up to what the job says, and leaves alone what says
// so already.
type writer struct {
	schema   *schema.Schema
	root     *yaml.Node
	was, job *assess.Job
}

// spellNulls writes out a null in a flow map: the library would put an empty
// text there, which is an answer of another kind.
func spellNulls(n *yaml.Node) {
	for _, c := range n.Content {
		if isNull(c) && c.Value == "" && n.Style&yaml.FlowStyle != 0 {
			c.Value = "null"
		}
		spellNulls(c)
	}
}

func dump(tree *yaml.Node, asJSON bool) ([]byte, error) {
	if asJSON {
		return dumpJSON(tree.Content[0]), nil
	}
	var out bytes.Buffer
	if !mentions(tree, "yaml-language-server:") {
		out.WriteString(schemaComment)
	}
	d, err := yaml.NewDumper(&out, yaml.WithIndent(2), yaml.WithCompactSeqIndent(false), yaml.WithLineWidth(-1))
	if err != nil {
		return nil, err
	}
	spellNulls(tree)
	if err := d.Dump(tree); err != nil {
		return nil, err
	}
	return out.Bytes(), d.Close()
}

// mentions reports whether a comment above the top keys holds a text.
func mentions(tree *yaml.Node, text string) bool {
	heads := append([]*yaml.Node{tree, tree.Content[0]}, tree.Content[0].Content...)
	return slices.ContainsFunc(heads, func(n *yaml.Node) bool { return strings.Contains(n.HeadComment, text) })
}

func (w *writer) record() {
	header := func(key, was, now string) {
		switch {
		case was == now:
		case now == "":
			dropChild(w.root, key)
		default:
			setChild(w.root, key, newScalar(now))
		}
	}
	if child(w.root, "format") == nil {
		header("format", "", Format)
	}
	header("region", w.was.Region, w.job.Region)
	header("units", w.was.Units, w.job.Units)
	header("visited", string(w.was.Visited), string(w.job.Visited))
	w.answers(w.root, schema.ScopeJob, w.was.Answers, w.job.Answers)
	w.areas()
	sortKeys(w.root, rankIn(topKeys))
}

func (w *writer) areas() {
	seq := sequenceOf(w.root, "areas", len(w.job.Areas))
	arrange(seq, len(w.job.Areas), func(i int) string { return w.job.Areas[i].ID }, func(i int, n *yaml.Node) {
		now := &w.job.Areas[i]
		was := w.was.Area(now.ID)
		if was == nil {
			was = &assess.Area{}
		}
		w.area(n, was, now)
	})
}

func (w *writer) area(n *yaml.Node, was, now *assess.Area) {
	switch {
	case now.Name == was.Name:
	case now.Name == "":
		dropChild(n, "name")
	default:
		setChild(n, "name", newScalar(now.Name))
	}
	w.answers(n, schema.ScopeArea, was.Answers, now.Answers)
	seq := sequenceOf(n, "zones", len(now.Zones))
	arrange(seq, len(now.Zones), func(i int) string { return now.Zones[i].ID }, func(i int, z *yaml.Node) {
		before := was.Zone(now.Zones[i].ID)
		if before == nil {
			before = &assess.Zone{}
		}
		w.zone(z, before, &now.Zones[i])
	})
	sortKeys(n, rankIn(areaKeys))
}

func (w *writer) zone(n *yaml.Node, was, now *assess.Zone) {
	w.answers(n, schema.ScopeZone, apart(was.Answers), apart(now.Answers))
	for _, list := range schema.ListScopes {
		w.list(n, list, was, now)
	}
	sortKeys(n, rankIn(zoneKeys))
}

// apart are the answers of a zone without those that close its lists, which
// stand in the lists.
func apart(answers assess.Answers) assess.Answers {
	out := make(assess.Answers, len(answers))
	for name, a := range answers {
		if !slices.ContainsFunc(schema.ListScopes[:], func(s schema.Scope) bool { return assess.CompleteField(s) == name }) {
			out[name] = a
		}
	}
	return out
}

// sequenceOf is the list below a key, made where there is something to put in.
func sequenceOf(n *yaml.Node, key string, size int) *yaml.Node {
	seq := child(n, key)
	if seq != nil && seq.Kind == yaml.SequenceNode {
		unfold(seq)
		return seq
	}
	seq = newSequence()
	if size > 0 {
		setChild(n, key, seq)
		return child(n, key)
	}
	return seq
}

// unfold lets an empty list or mapping in brackets grow over several lines.
func unfold(n *yaml.Node) {
	if len(n.Content) == 0 {
		n.Style &^= yaml.FlowStyle
	}
}

// arrange gives a list of things with ids the things wanted, in order: the
// node that stands there already, or a new one.
func arrange(seq *yaml.Node, size int, id func(int) string, fill func(int, *yaml.Node)) {
	wanted := make([]*yaml.Node, size)
	for i := range wanted {
		if wanted[i] = element(seq, id(i)); wanted[i] == nil {
			wanted[i] = newMapping()
			setChild(wanted[i], "id", newScalar(id(i)))
		}
		fill(i, wanted[i])
	}
	seq.Content = wanted
}

// element is the mapping of a list that has an id.
func element(seq *yaml.Node, id string) *yaml.Node {
	if seq == nil {
		return nil
	}
	for _, n := range seq.Content {
		if v := child(n, "id"); v != nil && v.Value == id {
			return n
		}
	}
	return nil
}

// rankIn ranks keys as a list of known keys has them; unknown keys come last.
func rankIn(known []string) func(string) int {
	return func(key string) int {
		if i := slices.Index(known, key); i >= 0 {
			return i
		}
		return len(known)
	}
}
