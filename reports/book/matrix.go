package book

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/rules"
)

// The floors of the matrix, and the days and papers that are tried on each.
var (
	grounds  = []string{"joists", "slab"}
	letter   = map[string]string{"paper.mortar_approval": "yes"}
	noLetter = map[string]string{"paper.mortar_approval": "no"}
	old      = map[string]string{"paper.mortar_approval": "no", "layer.year": "1970", "site.year_built": "1965"}
	bases    = []result.PathID{result.BackerBoard, result.Uncouple, result.IsolateFull, result.IsolateStrip, result.DirectBond}
)

// A row is what the rules say of one kind of old layer.
type row struct {
	kind              string // empty: the bare base
	bare, letter, old *result.ZoneResult
}

// matrix judges one kind of old layer after the other on floors that are good
// in every other way.
func (w *writer) matrix() (reports.Section, error) {
	s := w.chapter("matrix", w.say("book/lead.matrix"), w.say("book/lead.matrix_words"))
	for _, ground := range grounds {
		rows, err := matrixRows(w.main, ground)
		if err != nil {
			return s, err
		}
		s.Parts = append(s.Parts, reports.Part{ID: "matrix-" + ground, Heading: w.say("book/part." + ground),
			Table: w.matrixTable(ground).Of(w.language, rows)})
	}
	return s, nil
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

func judged(e *rules.Engine, g *ground, kind string, more map[string]string) (*result.ZoneResult, error) {
	job, err := g.with(kind, more)
	if err != nil {
		return nil, err
	}
	return &e.Assess(job, job.Visited).Areas[0].Zones[0], nil
}

func (w *writer) matrixTable(ground string) reports.TableOf[row] {
	t := reports.TableOf[row]{ID: "matrix_" + ground, Shape: reports.Grid, Columns: []reports.ColumnOf[row]{
		reports.TextColumn("book/column.old_layer", reports.Title, 26, func(r row) string { return w.layer(r.kind) }),
	}}
	for _, p := range bases {
		t.Columns = append(t.Columns, reports.ColumnOf[row]{Head: message.Verbatim(p.String()), Width: 10,
			Cell: func(r row) reports.Cell { return reports.Cell{Text: w.say("book/cell." + r.assembly(p))} }})
	}
	t.Columns = append(t.Columns,
		reports.TextColumn("book/column.steps", reports.Detail, 20, func(r row) string { return cmp.Or(r.steps(), w.say("book/cell.no")) }),
		reports.TextColumn("book/column.plan", reports.Detail, 30, w.plan),
		reports.TextColumn("book/column.with_letter", reports.Detail, 14, func(r row) string { return r.letter.Path.String() }),
		reports.TextColumn("book/column.of_the_years", reports.Detail, 14, func(r row) string {
			if r.old == nil {
				return w.say("book/cell.no")
			}
			return r.old.Path.String()
		}))
	return t
}

func (w *writer) layer(kind string) string {
	if kind == "" {
		return w.say("book/matrix.bare")
	}
	f, _ := w.main.Catalogue.Schema().Lookup("layer.kind")
	return w.main.Catalogue.Word(f, kind)
}

// assembly is the key of a cell: how one base stands without and with the letter.
// Where the layer has to go first, no base stands open on it.
func (r *row) assembly(p result.PathID) string {
	without, with := standing(r.bare, p), standing(r.letter, p)
	switch {
	case without.State == result.PathOpen && !r.bare.Path.IsAssembly():
		return "later"
	case without.State == result.PathOpen && r.bare.Path == p:
		return "leads"
	case without.State == result.PathOpen:
		return "yes"
	case with.State == result.PathOpen:
		return "letter"
	case without.State == result.PathWaiting:
		return "ask"
	}
	return "no"
}

// steps are those that are called for, and with a question mark those that wait.
func (r *row) steps() string {
	var list []string
	for _, s := range r.bare.Paths {
		switch {
		case s.Path.IsAssembly() || s.State == result.PathRuledOut:
		case s.State == result.PathWaiting:
			list = append(list, s.Path.String()+"?")
		default:
			list = append(list, s.Path.String())
		}
	}
	return strings.Join(list, ", ")
}

// plan is the whole way, step by step.
func (w *writer) plan(r row) string {
	way := ""
	for i, s := range r.bare.Plan {
		if i == 0 {
			way = s.Path.String()
			continue
		}
		way = w.say("book/matrix.then", "steps", way, "step", s.Path)
	}
	return way
}

func standing(z *result.ZoneResult, p result.PathID) result.PathStanding {
	i := slices.IndexFunc(z.Paths, func(s result.PathStanding) bool { return s.Path == p })
	if i < 0 {
		panic(fmt.Sprintf("book: no standing of %s", p))
	}
	return z.Paths[i]
}
