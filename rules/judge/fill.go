package judge

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"underfoot/assess/quantity"
)

// fill puts values into the holes of a text: {fact} and {figure.id}.
func (d *Describer) fill(text string, r *Ruling) string {
	var b strings.Builder
	for {
		before, after, ok := strings.Cut(text, "{")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		hole, rest, _ := strings.Cut(after, "}")
		value, _ := d.value(hole, r)
		b.WriteString(cmp.Or(inSentence(value), d.Language.Text("judge/value.not_known")))
		text = rest
	}
}

// value is a fact or a figure in words and units, and its unit's dimension.
func (d *Describer) value(name string, r *Ruling) (text, unit string) {
	if name == "" {
		return "", ""
	}
	if id, ok := strings.CutPrefix(name, "figure."); ok {
		f, ok := d.Figures.Figure(id)
		if !ok {
			return "", ""
		}
		return quantity.Write(f.Dimension, quantity.Point(f.Value), d.System), f.Dimension.String()
	}
	id, ok := d.Catalogue.Schema().Lookup(name)
	if !ok {
		return "", ""
	}
	return d.Show(id, r.Thing.Fact(id))
}

// inSentence writes the labels of choices with small letters, but not OSB or
// I-joist.
func inSentence(value string) string {
	parts := strings.Split(value, " or ")
	for i, part := range parts {
		first, n := utf8.DecodeRuneInString(part)
		if second, _ := utf8.DecodeRuneInString(part[n:]); unicode.IsLower(second) {
			parts[i] = string(unicode.ToLower(first)) + part[n:]
		}
	}
	return strings.Join(parts, " or ")
}
