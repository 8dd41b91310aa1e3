package question

import (
	"fmt"
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A Refused is a value that a question cannot take, with what it takes.
type Refused struct {
	What message.Message
	Hint message.Message
}

// Message is what is wrong; the hint says what to write instead.
func (r *Refused) Message() message.Message { return r.What }

// Error is what is wrong in English.
func (r *Refused) Error() string { return r.What.String() }

// sizeOfJoist is the one text that has a form of its own.
const sizeOfJoist = "joist.size"

// Read reads the text of one answer: a value or a range of them, or several
// possible choices with commas between. Errors are *Refused, *quantity.Unclear
// or *quantity.Malformed.
func (c *Catalogue) Read(d *schema.Declaration, text string, sys quantity.System) (schema.Set, error) {
	text = strings.TrimSpace(text)
	switch d.Kind {
	case schema.KindQuantity:
		r, err := quantity.Read(d.Dimension, text, sys)
		if err != nil {
			return schema.Set{}, err
		}
		if r.Meet(d.Bounds).IsEmpty() || r.Bounded() && !r.Within(d.Bounds) {
			return schema.Set{}, &Refused{
				What: message.New("question/refused.outside", "text", text, "fact", d.ID),
				Hint: message.New("question/refused.bounds", "range", quantity.Write(d.Dimension, d.Bounds, sys)),
			}
		}
		return schema.Set{Range: r}, nil
	case schema.KindText:
		if text == "" {
			return schema.Set{}, &Refused{What: message.New("question/refused.empty", "fact", d.ID), Hint: message.New("question/refused.write")}
		}
		if d.ID == sizeOfJoist {
			if _, err := quantity.ReadSize(text); err != nil {
				return schema.Set{}, err
			}
		}
		return schema.Set{Text: text}, nil
	}
	return c.readWords(d, text)
}

func (c *Catalogue) readWords(d *schema.Declaration, text string) (schema.Set, error) {
	var set schema.Set
	for _, word := range strings.Split(text, ",") {
		word = strings.TrimSpace(word)
		mask, ok := d.ChoiceBit(word)
		if !ok {
			mask = c.synonym(d, word)
		}
		if mask == 0 {
			return schema.Set{}, refuse(d, word)
		}
		set.Mask |= mask
	}
	return set, nil
}

// synonym is the mask of a word that people use for one or more choices.
func (c *Catalogue) synonym(d *schema.Declaration, word string) (mask uint64) {
	low := strings.ToLower(word)
	if d.Kind == schema.KindYesNo {
		return map[string]uint64{"y": 2, "true": 2, "n": 1, "false": 1, "none": 1, "yes": 2, "no": 1}[low]
	}
	if bit, ok := d.ChoiceBit(strings.ReplaceAll(low, " ", "-")); ok {
		return bit
	}
	for _, choice := range c.words[d.ID][low] {
		bit, _ := d.ChoiceBit(choice)
		mask |= bit
	}
	return mask
}

func refuse(d *schema.Declaration, word string) error {
	what := message.New("question/refused.choice", "word", strconv.Quote(word), "fact", d.ID)
	return &Refused{What: what, Hint: assess.OneOf(word, d.Choices)}
}

// Write is the text that Read gives back.
func (c *Catalogue) Write(d *schema.Declaration, s schema.Set, sys quantity.System) string {
	switch d.Kind {
	case schema.KindQuantity:
		return quantity.WriteExact(d.Dimension, s.Range, sys)
	case schema.KindText:
		return s.Text
	}
	return strings.Join(s.Words(d), ", ")
}

// Show is the value as a reader sees it: the choices' labels without what
// tells them apart, or the quantity in the reader's units.
func (c *Catalogue) Show(f schema.FactID, s schema.Set, sys quantity.System) string {
	d := c.names.Schema.Decl(f)
	switch d.Kind {
	case schema.KindQuantity:
		return quantity.Write(d.Dimension, s.Range, sys)
	case schema.KindText:
		return s.Text
	}
	words := s.Words(d)
	for i, w := range words {
		words[i] = c.Word(f, w)
	}
	return strings.Join(words, " or ")
}

// Word is what a reader calls a choice of a fact: its label without what tells
// it apart, which stands in brackets at its end. A tallied or derived fact has
// the labels of the fact whose choices it takes; a choice without a label is its
// own word.
func (c *Catalogue) Word(f schema.FactID, choice string) string {
	q := c.Question(f)
	if like := c.names.Schema.Decl(f).Like; like != "" {
		q = c.Find(like)
	}
	if q == nil || q.Text.Choices[choice] == "" {
		return choice
	}
	label, _, _ := strings.Cut(q.Text.Choices[choice], " (")
	return label
}

func readChoices(d *schema.Declaration, text string) (schema.Set, error) {
	return (&Catalogue{}).readWords(d, text)
}

// readBounds reads `lo .. hi`; the word visited stands for any year to come.
func readBounds(dim quantity.Dimension, text string) (quantity.Range, error) {
	lo, hi, ok := strings.Cut(text, " .. ")
	if !ok {
		return quantity.Range{}, fmt.Errorf("%q is not of the form low .. high", text)
	}
	if hi == "visited" {
		hi = "2200"
	}
	_, unit, _ := strings.Cut(hi, " ")
	if unit != "" && !strings.Contains(lo, " ") && !strings.Contains(lo, "/") {
		lo += " " + unit
	}
	l, err := quantity.Read(dim, withUnit(dim, lo), quantity.US)
	if err != nil {
		return quantity.Range{}, err
	}
	h, err := quantity.Read(dim, withUnit(dim, hi), quantity.US)
	return quantity.Range{Lo: l.Lo, Hi: h.Hi}, err
}

// withUnit adds the base unit to a bare number.
func withUnit(dim quantity.Dimension, text string) string {
	unit := map[quantity.Dimension]string{quantity.Length: "in", quantity.Area: "ft2", quantity.Load: "psf",
		quantity.Weight: "lb", quantity.Strength: "psi"}[dim]
	if unit == "" || strings.ContainsAny(text, "abcdefghijklmnopqrstuvwxyz") {
		return text
	}
	return text + " " + unit
}
