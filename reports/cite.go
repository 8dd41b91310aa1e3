package reports

import (
	"strconv"
	"strings"

	"underfoot/assess"
)

// citations number the sources of a view in the order in which they are first
// cited.
type citations struct {
	words
	list  []assess.Source
	index map[assess.Source]int
}

func (c *citations) number(s assess.Source) int {
	if n, ok := c.index[s]; ok {
		return n
	}
	c.list = append(c.list, s)
	c.index[s] = len(c.list)
	return len(c.list)
}

// cite lists the numbers of the sources; those that nobody has looked up say so.
func (c *citations) cite(sources ...assess.Source) string {
	var out []string
	for _, s := range sources {
		n := strconv.Itoa(c.number(s))
		switch s.Known {
		case "memory":
			n = c.say("known", "cite_memory", "n", n)
		case "common-practice":
			n = c.say("known", "cite_practice", "n", n)
		case "":
			n = c.say("known", "cite_unsaid", "n", n)
		}
		out = append(out, n)
	}
	return strings.Join(out, ", ")
}

// marked adds to a figure's text that a source of it was never looked up.
func (c *citations) marked(text string, sources ...assess.Source) string {
	if text == "" {
		return ""
	}
	mark := ""
	for _, s := range sources {
		switch s.Known {
		case "memory":
			return text + " (" + c.say("known", "mark_memory") + ")"
		case "common-practice":
			mark = " (" + c.say("known", "mark_practice") + ")"
		}
	}
	return text + mark
}
