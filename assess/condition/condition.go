// Package condition is the language of the rules: comparisons of facts with
// words, figures and quantities, joined by && and ||. It is a strict subset of
// the syntax of CEL but for `not in`, evaluated over sets of possible values: a
// condition is proven, refuted, or open on the addresses whose answers may settle
// it. Sets of words and parts of conditions may have names, which stand for them.
package condition

import (
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// Figures are the sourced numbers that a condition may name as figure.ID.
type Figures interface {
	// Figure is the figure of the region; ok is false where the region has none.
	Figure(id string) (f figure.Figure, ok bool)
	// IDs are the figures that there are in any region.
	IDs() []string
}

// Names is what a condition may refer to. Figures and Words may be nil.
type Names struct {
	Schema  *schema.Schema
	Figures Figures
	Words   *Vocabulary // the names of sets and of other conditions
}

// A Condition is one compiled condition. It never changes and may be used by
// several goroutines at once.
type Condition struct {
	source  string
	schema  *schema.Schema
	syntax  *node
	root    term
	reads   []schema.FactID
	figures []string
	lacks   []string
	splits  []split
}

// Compile reads a condition and checks it against the names. The place is that
// of the first character of src. All problems, up to twenty, are returned at once, each with
// the source line and a caret; with a problem there is no condition.
func Compile(src string, at Place, names Names) (*Condition, assess.Problems) {
	log := &problemLog{src: src, at: at}
	if len(src) > maxBytes {
		log.add(0, message.New("condition/bound.bytes", "most", maxBytes), message.New("condition/bound.hint"))
		return nil, log.problems
	}
	tree := parse(src, log)
	if tree.op == opBad {
		return nil, log.sorted()
	}
	ch := &checker{names: names, log: log, cond: &Condition{source: src, schema: names.Schema}}
	ch.cond.syntax = ch.expand(tree)
	ch.cond.root = ch.condition(ch.cond.syntax)
	if len(log.problems) > 0 {
		return nil, log.sorted()
	}
	ch.cond.splits = planSplits(&ch.cond.root, names.Schema)
	return ch.cond, nil
}

// Reads are the facts that the condition names, in order of first mention. The
// caller does not change the list; the same holds for the other lists.
func (c *Condition) Reads() []schema.FactID { return c.reads }

// Figures are the ids of the figures that the condition names, in order of
// first mention.
func (c *Condition) Figures() []string { return c.figures }

// Lacks are the figures that the condition names and the region has no value
// for. While there are any, Eval is open and depends on nothing.
func (c *Condition) Lacks() []string { return c.lacks }

// Scopes are the scopes of the facts that the condition names, once each, from
// the job inwards.
func (c *Condition) Scopes() []schema.Scope {
	var seen [schema.ScopePath + 1]bool
	for _, f := range c.reads {
		seen[c.schema.Decl(f).Scope] = true
	}
	var scopes []schema.Scope
	for s, is := range seen {
		if is {
			scopes = append(scopes, schema.Scope(s))
		}
	}
	return scopes
}

// Source is the condition as it is written, names and all, on one line.
func (c *Condition) Source() string { return strings.Join(strings.Fields(c.source), " ") }

// String is the condition in canonical text: single spaces, the fewest
// parentheses, plain quotes, and what a name stands for in place of the name.
// Compiling it again gives the same condition.
func (c *Condition) String() string { return c.syntax.canonical(0) }
