package question

import (
	"fmt"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A Fold says how the items of a list become one fact.
type Fold string

// The folds. First is the value of the top item that passes.
const (
	Any   Fold = "any"
	All   Fold = "all"
	Count Fold = "count"
	Sum   Fold = "sum"
	Most  Fold = "most"
	Least Fold = "least"
	First Fold = "first"
)

// A Tally makes a zone's fact from a list of the zone.
type Tally struct {
	ID    schema.FactID
	Over  schema.Scope
	Fold  Fold
	When  *condition.Condition // of any, all and count
	Of    schema.FactID        // of sum, most, least and first
	Where *condition.Condition // which items take part; nil: every one
	Empty schema.Set           // what first is for a closed empty list
}

func (r *tallyRecord) declare(facts []schema.Declaration) (schema.Declaration, error) {
	d := schema.Declaration{ID: r.ID, Scope: schema.ScopeZone, Nature: schema.Derived, Always: true, Bounds: quantity.AtLeast(0)}
	if over, ok := schema.ParseScope(r.Over); !ok || !over.Listed() {
		return d, fmt.Errorf("tally %s: %q is not a list", r.ID, r.Over)
	}
	if f := Fold(r.Fold); r.When == "" && (f == Any || f == All || f == Count) {
		return d, fmt.Errorf("tally %s: %s needs a condition under `when`", r.ID, f)
	}
	switch Fold(r.Fold) {
	case Any, All:
		d.Kind, d.Choices = schema.KindYesNo, schema.YesNoChoices
	case Count:
		d.Kind, d.Dimension = schema.KindQuantity, quantity.Number
	case Sum, Most, Least, First:
		of := find(facts, r.Of)
		if of == nil {
			return d, fmt.Errorf("tally %s: there is no fact %q", r.ID, r.Of)
		}
		d.Kind, d.Dimension, d.Choices, d.Bounds, d.Like = of.Kind, of.Dimension, of.Choices, of.Bounds, of.ID
		d.Always = Fold(r.Fold) == Sum || r.Empty != ""
		if Fold(r.Fold) == Sum {
			d.Bounds = quantity.AtLeast(0)
		}
		if r.Empty != "" {
			d.Choices = append(append([]string(nil), of.Choices...), r.Empty)
		}
	default:
		return d, fmt.Errorf("tally %s: %q is not a fold", r.ID, r.Fold)
	}
	return d, nil
}

func find(facts []schema.Declaration, id string) *schema.Declaration {
	for i := range facts {
		if facts[i].ID == id {
			return &facts[i]
		}
	}
	return nil
}

func (r *tallyRecord) compile(names condition.Names) (Tally, assess.Problems) {
	id, _ := names.Schema.Lookup(r.ID)
	t := Tally{ID: id, Fold: Fold(r.Fold)}
	t.Over, _ = schema.ParseScope(r.Over)
	if r.Of != "" {
		t.Of, _ = names.Schema.Lookup(r.Of)
	}
	var problems assess.Problems
	place := condition.Place{File: "tally.toml " + r.ID}
	compile := func(src string) *condition.Condition {
		if src == "" {
			return nil
		}
		c, ps := condition.Compile(src, place, names)
		problems = append(problems, ps...)
		return c
	}
	t.When, t.Where = compile(r.When), compile(r.Where)
	if r.Empty != "" {
		bit, _ := names.Schema.Decl(id).ChoiceBit(r.Empty)
		t.Empty = schema.Set{Mask: bit}
	}
	return t, problems
}
