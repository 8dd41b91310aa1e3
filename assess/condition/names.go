package condition

import (
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// broken reports whether a part of the node cannot be read or names nothing
// that there is. What stands beside it is not checked then.
func (c *checker) broken(n *node) bool {
	switch n.op {
	case opBad:
		return true
	case opFact:
		return c.names.Schema.Find(n.text) == nil
	case opFigure:
		return !c.isFigure(n.text)
	case opSet:
		return c.names.Words.set(n.text) == nil
	case opPart:
		return true // one that there is has been put in its place
	}
	return slices.ContainsFunc(n.kids, c.broken)
}

// mentions checks the names of a part that is broken elsewhere.
func (c *checker) mentions(n *node) {
	switch n.op {
	case opFact:
		c.fact(n)
	case opFigure:
		c.figure(n)
	case opSet:
		if c.names.Words.set(n.text) == nil {
			c.set(n)
		}
	case opPart:
		c.part(n)
	}
	for _, k := range n.kids {
		c.mentions(k)
	}
}

// fact finds a fact by its name and notes that the condition reads it.
func (c *checker) fact(n *node) (schema.FactID, bool) {
	f, ok := c.names.Schema.Lookup(n.text)
	if !ok {
		c.log.add(n.at, message.New("condition/no_fact.what", "name", n.text), assess.DidYouMean(n.text, c.factNames(n.text)))
		return 0, false
	}
	if !slices.Contains(c.cond.reads, f) {
		c.cond.reads = append(c.cond.reads, f)
	}
	return f, true
}

// factNames are the facts that a misspelt name may stand for: those of its
// topic where there is such a topic, since a field is misspelt more often.
func (c *checker) factNames(name string) []string {
	topic, _, _ := strings.Cut(name, ".")
	var all, same []string
	for _, d := range c.names.Schema.All() {
		all = append(all, d.ID)
		if strings.HasPrefix(d.ID, topic+".") {
			same = append(same, d.ID)
		}
	}
	if assess.Nearest(name, same) != "" {
		return same
	}
	return all
}

// lookup is a figure, and not ok where the region lacks it or no figure has the id.
func (c *checker) lookup(id string) (f figure.Figure, ok bool) {
	if c.names.Figures == nil {
		return f, false
	}
	return c.names.Figures.Figure(id)
}

func (c *checker) figureIDs() []string {
	if c.names.Figures == nil {
		return nil
	}
	return c.names.Figures.IDs()
}

// isFigure reports whether any region has the figure.
func (c *checker) isFigure(id string) bool {
	_, ok := c.lookup(id)
	return ok || slices.Contains(c.figureIDs(), id)
}

func (c *checker) figure(n *node) measured {
	if !c.isFigure(n.text) {
		c.log.add(n.at, message.New("condition/no_figure.what", "name", n.text), assess.DidYouMean(n.text, c.figureIDs()))
		return unmeasured
	}
	f, ok := c.lookup(n.text)
	if !slices.Contains(c.cond.figures, n.text) {
		c.cond.figures = append(c.cond.figures, n.text)
		if !ok {
			c.cond.lacks = append(c.cond.lacks, n.text)
		}
	}
	if !ok {
		return measured{number: everything, fits: true, ok: true, reach: 1, least: 1}
	}
	n.value, n.dim = f.Value, f.Dimension
	return constant(f.Value, f.Dimension, false)
}
