package book

import (
	"fmt"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/rules"
)

// The floors of the matrix, and the days and papers that are tried on each.
var (
	grounds = []struct{ file, title string }{
		{"joists", "On wood joists with two sheets of plywood"},
		{"slab", "On a concrete slab on the ground"},
	}
	letter   = map[string]string{"paper.mortar_approval": "yes"}
	noLetter = map[string]string{"paper.mortar_approval": "no"}
	old      = map[string]string{"paper.mortar_approval": "no", "layer.year": "1970", "site.year_built": "1965"}
	bases    = []assess.PathID{assess.BackerBoard, assess.Uncouple, assess.IsolateFull, assess.IsolateStrip, assess.DirectBond}
)

// A row is what the rules say of one kind of old layer.
type row struct {
	kind              string // empty: the bare base
	bare, letter, old *assess.ZoneResult
}

// matrix judges one kind of old layer after the other on floors that are good
// in every other way.
func (w *writer) matrix() error {
	w.chapter("matrix")
	for _, g := range grounds {
		rows, err := matrixRows(w.main, g.file)
		if err != nil {
			return err
		}
		w.heading(3, "matrix-"+g.file, g.title)
		w.grid(w.matrixTable(rows))
	}
	return nil
}

// matrixRows is the bare base and every kind of layer.
func matrixRows(e *rules.Engine, file string) ([]row, error) {
	g, err := open(file, e.Catalogue)
	if err != nil {
		return nil, err
	}
	var rows []row
	for _, kind := range append([]string{""}, e.Catalogue.Schema().Find("layer.kind").Choices...) {
		r := row{kind: kind}
		if r.bare, err = judged(e, g, kind, noLetter); err != nil {
			return nil, err
		}
		if r.letter, err = judged(e, g, kind, letter); err != nil {
			return nil, err
		}
		if kind != "" {
			if r.old, err = judged(e, g, kind, old); err != nil {
				return nil, err
			}
		}
		rows = append(rows, r)
	}
	return rows, nil
}

func judged(e *rules.Engine, g *ground, kind string, more map[string]string) (*assess.ZoneResult, error) {
	job, err := g.with(kind, more)
	if err != nil {
		return nil, err
	}
	return &e.Assess(job, job.Visited).Areas[0].Zones[0], nil
}

func (w *writer) matrixTable(rows []row) table {
	t := table{heads: []string{"Old layer"}}
	for _, p := range bases {
		t.heads = append(t.heads, p.String())
	}
	t.heads = append(t.heads, "Steps first", "The whole way", "Leads with the letter", "Leads if of the presumed years")
	for _, r := range rows {
		cells := []line{plain(w.layer(r.kind))}
		for _, p := range bases {
			cells = append(cells, plain(r.base(p)))
		}
		oldLead := "–"
		if r.old != nil {
			oldLead = r.old.Path.String()
		}
		cells = append(cells, plain(r.steps()), plain(r.way()), plain(r.letter.Path.String()), plain(oldLead))
		t.rows = append(t.rows, cells)
	}
	return t
}

func (w *writer) layer(kind string) string {
	if kind == "" {
		return "none: the bare base"
	}
	f, _ := w.main.Catalogue.Schema().Lookup("layer.kind")
	return w.main.Catalogue.Word(f, kind)
}

// base is a cell: how one base stands without and with the letter. Where the
// layer has to go first, no base stands open on it.
func (r *row) base(p assess.PathID) string {
	without, with := standing(r.bare, p), standing(r.letter, p)
	switch {
	case without.State == assess.PathOpen && !r.bare.Path.IsBase():
		return "later"
	case without.State == assess.PathOpen && r.bare.Path == p:
		return "yes+"
	case without.State == assess.PathOpen:
		return "yes"
	case with.State == assess.PathOpen:
		return "letter"
	case without.State == assess.PathWaiting:
		return "ask"
	}
	return "–"
}

// steps are those that are called for, and with a question mark those that wait.
func (r *row) steps() string {
	var list []string
	for _, s := range r.bare.Paths {
		switch {
		case s.Path.IsBase() || s.State == assess.PathRuledOut:
		case s.State == assess.PathWaiting:
			list = append(list, s.Path.String()+"?")
		default:
			list = append(list, s.Path.String())
		}
	}
	if len(list) == 0 {
		return "–"
	}
	return strings.Join(list, ", ")
}

// way is the plan, step by step.
func (r *row) way() string {
	var list []string
	for _, s := range r.bare.Plan {
		list = append(list, s.Path.String())
	}
	return strings.Join(list, ", then ")
}

func standing(z *assess.ZoneResult, p assess.PathID) assess.PathStanding {
	i := slices.IndexFunc(z.Paths, func(s assess.PathStanding) bool { return s.Path == p })
	if i < 0 {
		panic(fmt.Sprintf("book: no standing of %s", p))
	}
	return z.Paths[i]
}
