package book

import (
	"embed"
	"fmt"
	"maps"

	"underfoot/assess"
	"underfoot/assess/datafile"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/record"
	"underfoot/assess/schema"
)

//go:embed floor
var floors embed.FS

// A ground is an invented floor on which everything is good, and the kinds of
// layer that are laid on it.
type ground struct {
	catalogue *question.Catalogue
	job       *assess.Job
	every     map[string]string            // answers of any layer
	kind      map[string]map[string]string // what is different for some kinds
}

// open reads a floor by the name of its file.
func open(name string, c *question.Catalogue) (*ground, error) {
	data, err := floors.ReadFile("floor/" + name + ".yaml")
	if err != nil {
		return nil, err
	}
	doc, err := record.Read(data, name, c)
	if err != nil {
		return nil, err
	}
	layer, err := floors.ReadFile("floor/layer.toml")
	if err != nil {
		return nil, err
	}
	var answers struct {
		Every map[string]string            `toml:"every"`
		Kind  map[string]map[string]string `toml:"kind"`
	}
	if err := datafile.Decode("layer.toml", layer, &answers); err != nil {
		return nil, err
	}
	return &ground{c, doc.Job(), answers.Every, answers.Kind}, nil
}

// with is the floor with one layer of a kind on it and further answers of the
// job or the zone. An empty kind leaves the base bare.
func (g *ground) with(kind string, more map[string]string) (*assess.Job, error) {
	job := g.job.Clone()
	zone := &job.Areas[0].Zones[0]
	layer := assess.Answers{}
	answers := map[string]string{}
	if kind != "" {
		maps.Copy(answers, g.every)
		maps.Copy(answers, g.kind[kind])
		answers["layer.kind"] = kind
		answers["layer.complete"] = "yes"
		zone.Lists[schema.ScopeLayer] = []assess.Item{{ID: "old", Answers: layer}}
	}
	maps.Copy(answers, more)
	for id, text := range answers {
		q := g.catalogue.Find(id)
		if q == nil {
			return nil, fmt.Errorf("the floor of the matrix answers %s, which is no question", id)
		}
		set, err := g.catalogue.Read(q.Decl, text, quantity.US)
		if err != nil {
			return nil, fmt.Errorf("the floor of the matrix: %s: %w", id, err)
		}
		into := map[schema.Scope]assess.Answers{schema.ScopeJob: job.Answers, schema.ScopeZone: zone.Answers, schema.ScopeLayer: layer}
		into[q.Decl.Scope][id] = assess.Answer{Set: set, Text: text, Basis: assess.Document}
	}
	return job, nil
}
