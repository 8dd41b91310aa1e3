package condition

import (
	"maps"
	"slices"

	"underfoot/assess/schema"
)

// A Vocabulary is the names that conditions share: sets of words and parts of
// conditions. It never changes; With makes a larger one.
type Vocabulary struct {
	sets  map[string]*Set
	parts map[string]*Part
	order []string        // all names, as they were defined
	used  map[string]bool // by definitions and by what was told to Using
}

// A Set is words of a choice under one name. Families divide the words of their
// fact: each word is in exactly one, so that a new word belongs somewhere.
type Set struct {
	ID     string
	Of     string   // the fact whose words they are; facts with the same words may be compared with it
	Family bool     // one of the families that divide the words of the fact
	Words  []string // in the order of the fact's choices
	Sets   []string // of which it is made
}

// A Part is a condition under a name. Where the name stands, the condition does.
type Part struct {
	ID     string
	Source string // as it is written
	*Condition
}

// Sets are the sets in the order in which they are defined.
func (v *Vocabulary) Sets() []*Set { return named(v, v.sets) }

// Parts are the named conditions in the order in which they are defined.
func (v *Vocabulary) Parts() []*Part { return named(v, v.parts) }

func named[T any](v *Vocabulary, among map[string]*T) []*T {
	var out []*T
	for _, id := range v.order {
		if x := among[id]; x != nil {
			out = append(out, x)
		}
	}
	return out
}

// Set is the set of a name that has words of the fact; nil where there is none.
// A vocabulary that is nil has no names.
func (v *Vocabulary) Set(id string, of *schema.Declaration) *Set {
	if s := v.set(id); s != nil && s.fits(of) {
		return s
	}
	return nil
}

// fits reports whether the words of the set are words of the fact.
func (s *Set) fits(d *schema.Declaration) bool { return s.Of == d.ID || s.Of == d.Like }

func (v *Vocabulary) set(id string) *Set {
	if v == nil {
		return nil
	}
	return v.sets[id]
}

func (v *Vocabulary) part(id string) *Part {
	if v == nil {
		return nil
	}
	return v.parts[id]
}

// Using is the vocabulary with more names noted as used. Names that nobody has
// defined are left out.
func (v *Vocabulary) Using(names ...string) *Vocabulary {
	out := v.grow()
	for _, id := range names {
		out.used[id] = true
	}
	return out
}

// Unused are the names that neither another definition nor Using mentions. A
// family is never needless: it is part of a division.
func (v *Vocabulary) Unused() []string {
	var out []string
	for _, id := range v.order {
		if s := v.sets[id]; !v.used[id] && (s == nil || !s.Family) {
			out = append(out, id)
		}
	}
	return out
}

// grow is a copy that may take up more names.
func (v *Vocabulary) grow() *Vocabulary {
	if v == nil {
		v = &Vocabulary{}
	}
	out := &Vocabulary{map[string]*Set{}, map[string]*Part{}, slices.Clone(v.order), map[string]bool{}}
	maps.Copy(out.sets, v.sets)
	maps.Copy(out.parts, v.parts)
	maps.Copy(out.used, v.used)
	return out
}

// ids are the names of sets, or of parts, for hints.
func ids[T any](among map[string]*T) []string { return slices.Sorted(maps.Keys(among)) }

func (v *Vocabulary) setIDs() []string {
	if v == nil {
		return nil
	}
	return ids(v.sets)
}

func (v *Vocabulary) partIDs() []string {
	if v == nil {
		return nil
	}
	return ids(v.parts)
}
