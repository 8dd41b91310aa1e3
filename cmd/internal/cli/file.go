package cli

import (
	"io"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/record"
	"underfoot/cmd/internal/disk"
	"underfoot/rules"
)

// engines opens the rules of each region and unit system once.
type engines map[engineKey]*rules.Engine

type engineKey struct {
	region string
	system quantity.System
}

func (es engines) open(region string, sys quantity.System) (*rules.Engine, error) {
	key := engineKey{region, sys}
	if e := es[key]; e != nil {
		return e, nil
	}
	e, err := rules.Open(region, sys)
	if err == nil {
		es[key] = e
	}
	return e, err
}

// A file is a record with the rules that it asks for.
type file struct {
	name   string
	doc    *record.Document
	engine *rules.Engine
}

// load reads a record; `-` is the standard input.
func (a *app) load(name string) (*file, error) {
	data, err := a.bytes(name)
	if err != nil {
		return nil, err
	}
	return a.parse(name, data)
}

func (a *app) bytes(name string) ([]byte, error) {
	if name != "-" {
		data, _, err := disk.Load(name)
		return data, err
	}
	data, err := io.ReadAll(a.In)
	if err != nil {
		return nil, &assess.Problem{Kind: assess.IO, Place: "standard input", What: "cannot be read", Cause: err}
	}
	return data, nil
}

func (a *app) parse(name string, data []byte) (*file, error) {
	reader, err := a.engines.open("us", quantity.US)
	if err != nil {
		return nil, err
	}
	doc, err := record.Read(data, name, reader.Catalogue)
	if err != nil {
		return nil, err
	}
	return a.withRules(name, doc)
}

// withRules opens the rules that a record, or the flags, ask for.
func (a *app) withRules(name string, doc *record.Document) (*file, error) {
	job := doc.Job()
	region, sys := job.Region, doc.System()
	if a.region != "" {
		region = a.region
	}
	if a.units != "" {
		sys = a.system()
	}
	engine, err := a.engines.open(region, sys)
	return &file{name: name, doc: doc, engine: engine}, err
}

// assess is the whole answer to a file.
func (a *app) assess(f *file) *assess.Result {
	r := f.engine.Assess(f.doc.Job(), a.today)
	r.File = f.name
	return r
}
