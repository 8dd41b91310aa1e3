package condition

import (
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// family defines a family. Whether the families divide the words of their fact
// is asked when all are there.
func (d *definer) family(r FamilyRecord) {
	of := d.choice(r.ID, r.Of)
	if of == nil {
		return
	}
	d.known(r.ID, of, r.Words)
	d.store(&Set{ID: r.ID, Of: r.Of, Family: true, Words: r.Words}, of)
}

// set defines a set of sets and words.
func (d *definer) set(r SetRecord) {
	found := len(d.problems)
	d.need(r.Sets)
	if len(d.problems) > found {
		return
	}
	of := d.choice(r.ID, r.Of)
	if of == nil {
		return
	}
	d.known(r.ID, of, append(slices.Clone(r.Words), r.Leaves...))
	words := slices.Clone(r.Words)
	for _, id := range r.Sets {
		switch s := d.sets[id]; {
		case s == nil:
			d.fault(r.ID, message.New("condition/set.none", "name", id), assess.DidYouMean(id, ids(d.sets)))
		case s.Of != r.Of:
			d.fault(r.ID, message.New("condition/set.foreign", "name", id, "of", s.Of, "fact", r.Of), noHint)
		default:
			words = append(words, s.Words...)
		}
	}
	d.store(&Set{ID: r.ID, Of: r.Of, Words: words, Sets: r.Sets}, of)
	d.undecided(r, words)
}

// choice is the fact whose words a set has; nil where it has none.
func (d *definer) choice(id, fact string) *schema.Declaration {
	of := d.names.Schema.Find(fact)
	switch {
	case of == nil:
		d.fault(id, message.New("condition/no_fact.what", "name", fact), assess.DidYouMean(fact, d.facts()))
	case of.Kind != schema.KindChoice:
		d.fault(id, message.New("condition/set.no_choice", "fact", fact), noHint)
		of = nil
	case slices.Contains(of.Choices, id):
		d.fault(id, message.New("condition/set.is_word", "name", id, "fact", fact), noHint)
	}
	return of
}

func (d *definer) facts() []string {
	var names []string
	for _, f := range d.names.Schema.All() {
		names = append(names, f.ID)
	}
	return names
}

// known refuses words that the fact does not have.
func (d *definer) known(id string, of *schema.Declaration, words []string) {
	for _, w := range words {
		if !slices.Contains(of.Choices, w) {
			d.fault(id, message.New("condition/set.no_word", "fact", of.ID, "word", w), assess.DidYouMean(w, of.Choices))
		}
	}
}

// store takes up a set with its words in the order of the fact's choices.
func (d *definer) store(s *Set, of *schema.Declaration) {
	place := func(w string) int { return slices.Index(of.Choices, w) }
	slices.SortFunc(s.Words, func(a, b string) int { return place(a) - place(b) })
	if len(s.Words) == 0 {
		d.fault(s.ID, message.New("condition/set.empty"), noHint)
	}
	for i, w := range s.Words {
		if i > 0 && s.Words[i-1] == w {
			d.fault(s.ID, message.New("condition/set.word_twice", "word", w), noHint)
		}
	}
	for _, id := range d.order {
		if o := d.sets[id]; o != nil && o.Of == s.Of && slices.Equal(o.Words, s.Words) {
			d.fault(s.ID, message.New("condition/set.same", "name", o.ID), noHint)
		}
	}
	d.sets[s.ID] = s
}

// undecided holds what a set says of each family that it names words of against
// all words of the family: those that it has and those that it leaves.
func (d *definer) undecided(r SetRecord, has []string) {
	if !slices.ContainsFunc(d.Sets(), func(f *Set) bool { return f.Family && f.Of == r.Of }) {
		d.fault(r.ID, message.New("condition/set.undivided", "fact", r.Of), message.New("condition/set.undivided_hint"))
	}
	leaves := slices.Clone(r.Leaves)
	for _, f := range d.Sets() {
		if !f.Family || f.Of != r.Of || !overlap(f.Words, r.Words) {
			continue
		}
		for _, w := range f.Words {
			at := slices.Index(leaves, w)
			switch in := slices.Contains(has, w); {
			case in && at >= 0:
				d.fault(r.ID, message.New("condition/set.both", "word", w), noHint)
			case !in && at < 0:
				d.fault(r.ID, message.New("condition/set.undecided", "family", f.ID, "word", w), message.New("condition/set.undecided_hint"))
			}
			if at >= 0 {
				leaves = slices.Delete(leaves, at, at+1)
			}
		}
	}
	for _, w := range leaves {
		d.fault(r.ID, message.New("condition/set.needless", "word", w), noHint)
	}
}

func overlap(a, b []string) bool {
	return slices.ContainsFunc(a, func(w string) bool { return slices.Contains(b, w) })
}

// divided holds the families of each fact against its words: each is in one.
func (d *definer) divided(families []FamilyRecord) {
	seen := map[string]bool{}
	for _, r := range families {
		of := d.names.Schema.Find(r.Of)
		if of == nil || seen[r.Of] {
			continue
		}
		seen[r.Of] = true
		for _, w := range of.Choices {
			switch in := d.familiesOf(r.Of, w); {
			case len(in) == 0:
				d.fault(r.Of, message.New("condition/set.no_family", "word", w, "fact", r.Of), message.New("condition/set.no_family_hint"))
			case len(in) > 1:
				d.fault(r.Of, message.New("condition/set.two_families", "word", w, "families", strings.Join(in, ", ")), noHint)
			}
		}
	}
}

func (d *definer) familiesOf(fact, word string) []string {
	var in []string
	for _, f := range d.Sets() {
		if f.Family && f.Of == fact && slices.Contains(f.Words, word) {
			in = append(in, f.ID)
		}
	}
	return in
}
