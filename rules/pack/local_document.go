package pack

import (
	"errors"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/message"
)

// A document is the text of a local pack with the place of each of its values.
type document struct {
	file, text string
	root       *node
}

// A node is one value of a document. The root and what a header opens are
// tables too.
type node struct {
	kind   unstable.Kind // String, Bool, Integer, Float, a date or time, Array, InlineTable
	at     int           // first byte; of a list or a header, that of its key
	text   int           // first byte of what a text says
	order  []string      // keys of a table as they stand
	keys   map[string]int
	fields map[string]*node
	items  []*node
}

// readDocument reads TOML and finds where its values stand.
func readDocument(file string, data []byte) (*document, error) {
	d := &document{file: file, text: string(data), root: newTable(0)}
	if !utf8.Valid(data) {
		return nil, assess.Problems{{Kind: assess.Invalid, Place: d.file, What: message.New("pack/text.encoding"), Hint: message.New("pack/text.save")}}
	}
	d.parse(data)
	if err := d.bounded(); err != nil {
		return nil, err
	}
	return d, d.faults(data)
}

// parse finds the values as far as the text can be read.
func (d *document) parse(data []byte) {
	var p unstable.Parser
	p.Reset(data)
	table := d.root
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table:
			table = d.root.open(e, false)
		case unstable.ArrayTable:
			table = d.root.open(e, true)
		case unstable.KeyValue:
			d.put(table, e)
		}
	}
}

// bounded refuses a text with too many records of one kind, or with a table of
// too many keys: reading those takes a decoder long.
func (d *document) bounded() error {
	for _, key := range d.root.order {
		if n := d.root.fields[key]; len(n.items) > maxLocalRecords {
			return d.refuse(n.items[maxLocalRecords], message.New("pack/size.records", "count", len(n.items), "key", key, "most", maxLocalRecords))
		}
	}
	if n := d.root.crowded(); n != nil {
		return d.refuse(n, message.New("pack/size.keys", "count", len(n.order), "most", maxLocalRecords))
	}
	return nil
}

func (d *document) refuse(n *node, what message.Message) error {
	return assess.Problems{place{doc: d, node: n}.problem(what, message.New("pack/size.split_pack"))}
}

// crowded is a table with too many keys; nil where there is none.
func (n *node) crowded() *node {
	if len(n.order) > maxLocalRecords {
		return n
	}
	for _, key := range n.order {
		if c := n.fields[key].crowded(); c != nil {
			return c
		}
	}
	for _, item := range n.items {
		if c := item.crowded(); c != nil {
			return c
		}
	}
	return nil
}

// faults is the first place at which the text is no TOML, or none.
func (d *document) faults(data []byte) error {
	var any map[string]any
	err := toml.Unmarshal(data, &any)
	var fault *toml.DecodeError
	if !errors.As(err, &fault) {
		return err
	}
	line, column := fault.Position()
	lines := strings.SplitAfter(d.text, "\n")
	start := len(strings.Join(lines[:line-1], ""))
	offset := min(start+column-1, len(d.text))
	return assess.Problems{{Kind: assess.Invalid, Place: d.place(offset).String(), What: message.Verbatim(strings.TrimPrefix(err.Error(), "toml: ")),
		Lines: d.underline(offset)}}
}

func newTable(at int) *node {
	return &node{kind: unstable.InlineTable, at: at, text: at, keys: map[string]int{}, fields: map[string]*node{}}
}

// add puts a value under a key that the table does not have yet.
func (n *node) add(key string, at int, v *node) *node {
	n.order = append(n.order, key)
	n.keys[key], n.fields[key] = at, v
	return v
}

// last is the table itself, or the newest one of a list of tables.
func (n *node) last() *node {
	if len(n.items) > 0 {
		return n.items[len(n.items)-1]
	}
	return n
}

// open is the table that a header opens: of a list, a new one at its end.
func (n *node) open(header *unstable.Node, list bool) *node {
	for it := header.Key(); it.Next(); {
		key, at := string(it.Node().Data), int(it.Node().Raw.Offset)
		next := n.fields[key]
		if next == nil {
			next = newTable(at)
			if list && it.IsLast() {
				next.kind = unstable.Array
			}
			n.add(key, at, next)
		}
		if list && it.IsLast() {
			next.items = append(next.items, newTable(at))
		}
		n = next.last()
	}
	return n
}

// put stores a key with its value; a key with dots opens tables.
func (d *document) put(table *node, e *unstable.Node) {
	for it := e.Key(); it.Next(); {
		key, at := string(it.Node().Data), int(it.Node().Raw.Offset)
		if it.IsLast() {
			table.add(key, at, d.value(e.Value(), at))
			return
		}
		next := table.fields[key]
		if next == nil {
			next = table.add(key, at, newTable(at))
		}
		table = next
	}
}

// value is a value with everything in it; where the parser does not say where
// it stands, it stands where its key does.
func (d *document) value(v *unstable.Node, at int) *node {
	if v.Raw.Length > 0 {
		at = int(v.Raw.Offset)
	}
	out := newTable(at)
	out.kind = v.Kind
	switch v.Kind {
	case unstable.String:
		out.text = at + quotes(d.text[at:])
	case unstable.Array:
		for it := v.Children(); it.Next(); {
			out.items = append(out.items, d.value(it.Node(), at))
		}
	case unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			d.put(out, it.Node())
		}
	}
	return out
}

// quotes is how many bytes stand before what a text says: its quotes, and the
// line break behind three of them.
func quotes(s string) int {
	triple := strings.Repeat(s[:1], 3)
	if !strings.HasPrefix(s, triple) {
		return 1
	}
	rest := s[3:]
	if strings.HasPrefix(rest, "\r\n") {
		return 5
	}
	if strings.HasPrefix(rest, "\n") {
		return 4
	}
	return 3
}

// place is the line and the column of a byte.
func (d *document) place(offset int) condition.Place {
	before := d.text[:offset]
	line := strings.LastIndexByte(before, '\n') + 1
	return condition.Place{File: d.file, Line: strings.Count(before, "\n") + 1, Column: utf8.RuneCountInString(before[line:]) + 1}
}

// near is how much of a long line is shown on either side of a fault.
const near = 100

// underline is the line of a byte with a caret below it, cut where it is long.
func (d *document) underline(offset int) string {
	from, to := max(0, offset-near), min(len(d.text), offset+near)
	for from < offset && !utf8.RuneStart(d.text[from]) {
		from++
	}
	for to < len(d.text) && !utf8.RuneStart(d.text[to]) {
		to--
	}
	return condition.Underline(d.text[from:to], offset-from)
}
