package pack

import (
	"fmt"
	"iter"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"underfoot/assess/schema"
)

// An edit is one small change to the text of a condition, and what was done.
type edit struct{ what, text string }

// signs are the words of a condition's canonical text.
var signs = regexp.MustCompile(`"[^"]*"|'[^']*'|&&|\|\||[<>=!]=|[<>!()\[\],*/+-]|[\w.]+`)

// A phrase is the text of a condition with the places of its words.
type phrase struct {
	text   string
	at     [][]int // first byte and the byte behind, of each word
	schema *schema.Schema
}

func newPhrase(text string, schema *schema.Schema) phrase {
	return phrase{text, signs.FindAllStringIndex(text, -1), schema}
}

func (p phrase) word(i int) string { return p.text[p.at[i][0]:p.at[i][1]] }

// cut is the text with the bytes from lo to hi replaced.
func (p phrase) cut(lo, hi int, by string) string { return p.text[:lo] + by + p.text[hi:] }

// edits are all small changes: signs, words of lists, plain numbers, and parts
// of chains.
func (p phrase) edits() iter.Seq[edit] {
	return func(yield func(edit) bool) {
		for _, list := range [][]edit{p.neighbours(), p.lists(), p.parts(0, len(p.at))} {
			for _, e := range list {
				if !yield(e) {
					return
				}
			}
		}
	}
}

// beside are the neighbours of each sign: the boundary in or out, and the other
// way round.
var beside = map[string][]string{"<": {"<=", ">="}, "<=": {"<", ">"}, ">": {">=", "<="}, ">=": {">", "<"},
	"==": {"!="}, "!=": {"=="}, "&&": {"||"}, "||": {"&&"}, "in": {"not in"}, "not": {""}}

// neighbours puts its neighbours in the place of every sign, and the counts
// next to it in the place of every plain number.
func (p phrase) neighbours() []edit {
	var out []edit
	for i, at := range p.at {
		word := p.word(i)
		others := beside[word]
		if n, err := strconv.Atoi(word); err == nil {
			others = []string{strconv.Itoa(n - 1), strconv.Itoa(n + 1)}
		}
		for _, other := range others {
			out = append(out, edit{fmt.Sprintf("%s for %s after %s", other, word, p.before(i)), p.cut(at[0], at[1], other)})
		}
	}
	return out
}

// before is the text in front of a word, as much as names the place.
func (p phrase) before(i int) string {
	const enough = 40
	text := strings.TrimSpace(p.text[:p.at[i][0]])
	return text[max(0, len(text)-enough):]
}

// lists drops each word of every list in turn, and adds each that is foreign.
func (p phrase) lists() []edit {
	var out []edit
	count := 0
	for i := range p.at {
		if p.word(i) != "in" {
			continue
		}
		count++
		fact := i - 1
		if p.word(fact) == "not" {
			fact--
		}
		end := i + 1
		for p.word(end) != "]" {
			end++
		}
		for _, e := range p.list(fact, i+2, end) {
			out = append(out, edit{fmt.Sprintf("%s in list %d, of %s", e.what, count, p.word(fact)), e.text})
		}
	}
	return out
}

// list edits the list of the words from lo to hi that a fact is compared with.
func (p phrase) list(fact, lo, hi int) []edit {
	var words []string
	for i := lo; i < hi; i += 2 {
		words = append(words, p.word(i))
	}
	with := func(what string, words []string) edit {
		return edit{what, p.cut(p.at[lo][0], p.at[hi][0], strings.Join(words, ", "))}
	}
	var out []edit
	for i, w := range words {
		if len(words) > 1 {
			out = append(out, with("without "+w, slices.Delete(slices.Clone(words), i, i+1)))
		}
	}
	for _, choice := range p.schema.Find(p.word(fact)).Choices {
		if w := strconv.Quote(choice); !slices.Contains(words, w) {
			out = append(out, with("with "+w, append(slices.Clone(words), w)))
		}
	}
	return out
}

// parts drops each part of every chain of && or || in turn.
func (p phrase) parts(lo, hi int) []edit {
	ends := p.chain(lo, hi, "||")
	if len(ends) == 1 {
		ends = p.chain(lo, hi, "&&")
	}
	if len(ends) == 1 {
		return p.inside(lo, hi)
	}
	var out []edit
	for k, end := range ends {
		start := lo
		if k > 0 {
			start = ends[k-1] + 1
		}
		from, to := p.at[max(start-1, lo)][0], p.at[end-1][1]
		if k == 0 {
			to = p.at[end+1][0]
		}
		out = append(out, edit{"without " + p.text[p.at[start][0]:p.at[end-1][1]], p.cut(from, to, "")})
		out = append(out, p.parts(start, end)...)
	}
	return out
}

// chain are the ends of the parts that a sign joins outside all brackets.
func (p phrase) chain(lo, hi int, sign string) []int {
	var ends []int
	depth := 0
	for i := lo; i < hi; i++ {
		switch w := p.word(i); {
		case w == "(":
			depth++
		case w == ")":
			depth--
		case w == sign && depth == 0:
			ends = append(ends, i)
		}
	}
	return append(ends, hi)
}

// inside goes into the brackets that enclose a whole part.
func (p phrase) inside(lo, hi int) []edit {
	if p.word(lo) == "!" {
		lo++
	}
	if p.word(lo) != "(" || p.word(hi-1) != ")" {
		return nil
	}
	return p.parts(lo+1, hi-1)
}
