package record

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/plaintext"
)

// A place is a line and a column, both counted from 1, columns in characters.
type place struct{ line, column int }

func at(n *yaml.Node) place { return place{n.Line, n.Column} }

// A ledger collects what is wrong with one file.
type ledger struct {
	name  string
	data  []byte
	found []entry
}

type entry struct {
	place   place
	problem *assess.Problem
}

// maxProblems bounds what one broken file can make the program say.
const maxProblems = 100

// noHint is for a problem whose next step is plain.
var noHint message.Message

// note adds a problem at a place; what is lower case and has no full stop.
// Beyond the bound it says once that there are more.
func (l *ledger) note(at place, what, hint message.Message) {
	switch {
	case len(l.found) > maxProblems:
		return
	case len(l.found) == maxProblems:
		what, hint = message.New("record/more.what", "count", maxProblems), message.New("record/more.hint")
	}
	l.found = append(l.found, entry{at, &assess.Problem{
		Kind:  assess.Invalid,
		Place: fmt.Sprintf("%s:%d:%d", l.name, at.line, at.column),
		What:  what,
		Hint:  hint,
		Lines: excerpt(l.data, at),
	}})
}

// problems are those found so far, in the order of the file.
func (l *ledger) problems() assess.Problems {
	slices.SortStableFunc(l.found, func(a, b entry) int {
		return cmp.Or(cmp.Compare(a.place.line, b.place.line), cmp.Compare(a.place.column, b.place.column))
	})
	out := make(assess.Problems, len(l.found))
	for i, e := range l.found {
		out[i] = e.problem
	}
	return out
}

// excerpt is the line of a place with a caret below the column. Of a long line
// it shows the part around the caret; characters that cannot be seen or that
// turn the text round are shown as a question mark.
func excerpt(data []byte, at place) string {
	line := []rune(string(bytes.TrimRight(lineOf(data, at.line), "\r")))
	column := min(max(at.column-1, 0), len(line))
	from := max(0, min(column-excerptWidth/2, len(line)-excerptWidth))
	to := min(len(line), from+excerptWidth)
	shown := make([]rune, 0, to-from)
	pad := make([]rune, 0, column-from)
	for i, r := range line[from:to] {
		if plaintext.Hidden(r) {
			r = '?'
		}
		shown = append(shown, r)
		if i < column-from {
			if r != '\t' {
				r = ' '
			}
			pad = append(pad, r)
		}
	}
	return "    " + string(shown) + "\n    " + string(pad) + "^"
}

// excerptWidth is how much of a line is shown, in characters.
const excerptWidth = 100

func lineOf(data []byte, number int) []byte {
	for ; number > 1; number-- {
		_, rest, ok := bytes.Cut(data, []byte("\n"))
		if !ok {
			return nil
		}
		data = rest
	}
	line, _, _ := bytes.Cut(data, []byte("\n"))
	return line
}
