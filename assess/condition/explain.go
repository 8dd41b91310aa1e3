package condition

import (
	"strings"

	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// Show says how an explanation names things. Where Label or Word is nil, facts
// have their short names and choices the words of the record.
type Show struct {
	Units quantity.System
	Label func(schema.FactID) string
	Word  func(f schema.FactID, choice string) string
}

// A Joint says how the parts of an explanation belong together.
type Joint uint8

// Leaf is a comparison. Either holds the parts of a condition that is settled
// whichever way each of them turns out.
const (
	Leaf Joint = iota
	All
	Any
	Not
	Either
)

// An Explanation is what decided a condition: the same tree with the deciding
// branches only. A chain that comes down to one branch is that branch.
type Explanation struct {
	Joint Joint
	Truth logic.Truth
	Text  message.Message // of a Leaf: the comparison with the values that its facts have
	Facts []schema.FactID // of a Leaf: the facts that it names
	Parts []Explanation
}

// Explain says what decided the outcome that Eval gives for the same facts.
// Where the outcome is open, the deciding branches are the open ones.
func (c *Condition) Explain(r schema.Reader, show Show) Explanation {
	if len(c.lacks) > 0 {
		return Explanation{Text: message.New("condition/lacks.figure", "names", strings.Join(c.lacks, ", "))}
	}
	e := explainer{frame: frame{reader: r, blind: true}, words: words{c.schema, show, r}}
	out := e.explain(&c.root)
	if t := c.Eval(r).Truth; t != out.Truth {
		return Explanation{Joint: Either, Truth: t, Parts: []Explanation{out}}
	}
	return out
}

type explainer struct {
	frame frame
	words words
}

func (e *explainer) explain(t *term) Explanation {
	truth := t.eval(&e.frame).Truth
	switch t.op {
	case opAnd, opOr:
		return e.chain(t, truth)
	case opNot:
		return Explanation{Joint: Not, Truth: truth, Parts: []Explanation{e.explain(&t.kids[0])}}
	}
	return Explanation{Truth: truth, Text: e.words.comparison(t.from), Facts: t.facts}
}

// chain keeps the parts that have the truth of the whole.
func (e *explainer) chain(t *term, truth logic.Truth) Explanation {
	x := Explanation{Joint: All, Truth: truth}
	if t.op == opOr {
		x.Joint = Any
	}
	for i := range t.kids {
		if t.kids[i].eval(&e.frame).Truth == truth {
			x.Parts = append(x.Parts, e.explain(&t.kids[i]))
		}
	}
	if len(x.Parts) == 1 {
		return x.Parts[0]
	}
	return x
}

var jointKeys = [...]string{All: "all", Any: "any", Not: "contrary", Either: "either"}

// Lines are the explanation as text: a line for each comparison, those of a
// chain set in below it.
func (x Explanation) Lines(l *message.Language) string {
	var b strings.Builder
	x.write(&b, l, "")
	return strings.TrimSuffix(b.String(), "\n")
}

func (x Explanation) write(b *strings.Builder, l *message.Language, indent string) {
	text := x.Text
	if x.Joint != Leaf {
		text = x.Joint.Message()
	}
	b.WriteString(indent + l.Text("condition/decided."+x.Truth.String(), "what", text) + "\n")
	for _, p := range x.Parts {
		p.write(b, l, indent+"  ")
	}
}
