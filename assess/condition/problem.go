package condition

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/plaintext"
)

// A Place is where a condition's first character stands. Line and Column count
// from 1; columns are characters, not bytes. Line 0 says that only the file, or
// the record, is known.
type Place struct {
	File         string
	Line, Column int
}

// String is file:line:column, or the file alone.
func (p Place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// move is the place of a byte of src.
func (p Place) move(src string, offset int) Place {
	if p.Line == 0 {
		return p
	}
	before := src[:offset]
	if nl := strings.LastIndexByte(before, '\n'); nl >= 0 {
		p.Line += strings.Count(before, "\n")
		p.Column = 1
		before = before[nl+1:]
	}
	p.Column += utf8.RuneCountInString(before)
	return p
}

// A problemLog collects what is wrong with one condition.
type problemLog struct {
	src      string
	at       Place
	problems assess.Problems
	offsets  []int
}

// maxProblems bounds what one condition is told, so that a text which is none
// costs little.
const maxProblems = 20

// noHint is for a problem whose next step is plain.
var noHint message.Message

// add notes a problem at a byte of the source.
func (l *problemLog) add(offset int, what, hint message.Message) {
	if len(l.problems) == maxProblems {
		return
	}
	l.offsets = append(l.offsets, offset)
	l.problems = append(l.problems, &assess.Problem{
		Kind:  assess.Invalid,
		Place: l.at.move(l.src, offset).String(),
		What:  what,
		Hint:  hint,
		Lines: Underline(l.src, offset),
	})
}

// sorted is every problem in the order of the source.
func (l *problemLog) sorted() assess.Problems {
	order := make([]int, len(l.problems))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(l.offsets[a], l.offsets[b]) })
	out := make(assess.Problems, len(order))
	for i, j := range order {
		out[i] = l.problems[j]
	}
	return out
}

// Underline is the line of src that holds the byte, and below it a caret that
// stands under it on a screen.
func Underline(src string, offset int) string {
	start := strings.LastIndexByte(src[:offset], '\n') + 1
	line, _, _ := strings.Cut(src[start:], "\n")
	return "  " + plaintext.Marked(line) + "\n  " + padding(plaintext.Marked(src[start:offset])) + "^"
}

// padding is blank text as wide as s: tabs stay tabs, wide characters take two
// columns, combining marks none.
func padding(s string) string {
	parts := strings.Split(s, "\t")
	for i, p := range parts {
		parts[i] = strings.Repeat(" ", plaintext.Width(p))
	}
	return strings.Join(parts, "\t")
}
