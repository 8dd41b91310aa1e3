package reports

import (
	"strconv"
	"strings"

	"underfoot/assess/result"
)

// citations number the sources of a view in the order in which they are first
// cited.
type citations struct {
	words
	list  []result.Source
	index map[result.Source]int
}

func (c *citations) number(s result.Source) int {
	s.ID = "" // two statements read in one place are one source
	if n, ok := c.index[s]; ok {
		return n
	}
	c.list = append(c.list, s)
	c.index[s] = len(c.list)
	return len(c.list)
}

// cite lists the numbers of the sources, each once; those that nobody has looked up say so.
func (c *citations) cite(sources ...result.Source) string {
	var out []string
	for _, s := range sources {
		n := strconv.Itoa(c.number(s))
		switch s.Known {
		case "memory":
			n = c.say("report/known.cite_memory", "n", n)
		case "common-practice":
			n = c.say("report/known.cite_practice", "n", n)
		case "":
			n = c.say("report/known.cite_unsaid", "n", n)
		}
		out = append(out, n)
	}
	return strings.Join(distinct(out), ", ")
}

// firmness says of figures whether a source of theirs was never looked up; empty
// where all of them were.
func (c *citations) firmness(sources ...result.Source) string {
	count := map[string]int{}
	for _, s := range sources {
		count[s.Known]++
	}
	var out []string
	for _, known := range []string{"memory", "common-practice"} {
		switch n := count[known]; {
		case n == 0:
		case n == len(sources):
			out = append(out, c.say("report/known."+"all_"+known))
		default:
			out = append(out, c.say("report/known."+"some_"+known))
		}
	}
	return strings.Join(out, ", ")
}
