package cli

import (
	"io"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/record"
	"underfoot/assess/result"
	"underfoot/cmd/internal/disk"
	"underfoot/rules"
	"underfoot/rules/pack"
)

// engines opens the rules of each region and unit system once.
type engines map[engineKey]*rules.Engine

type engineKey struct {
	region   string
	system   quantity.System
	language *message.Language
	bare     bool // without local packs
}

func (es engines) open(key engineKey, packs ...*pack.Local) (*rules.Engine, error) {
	if e := es[key]; e != nil {
		return e, nil
	}
	e, err := rules.Open(key.region, key.system, key.language, packs...)
	if err == nil {
		es[key] = e
	}
	return e, err
}

// open is the engine of a region with the packs that were named.
func (a *app) open(region string, sys quantity.System) (*rules.Engine, error) {
	return a.engines.open(engineKey{region: region, system: sys, language: a.language}, a.packs...)
}

// bare is an engine for its catalogue, which is that of every region.
func (a *app) bare() (*rules.Engine, error) {
	return a.engines.open(engineKey{region: "us", system: quantity.US, language: a.language, bare: true})
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
		data, err := disk.Load(name)
		return data, err
	}
	data, err := io.ReadAll(a.In)
	if err != nil {
		return nil, &assess.Problem{Kind: assess.IO, Place: "standard input", What: message.New("cli/problem.input"), Cause: err}
	}
	return data, nil
}

func (a *app) parse(name string, data []byte) (*file, error) {
	reader, err := a.bare()
	if err != nil {
		return nil, err
	}
	doc, err := a.read(name, data, reader.Catalogue)
	if err != nil {
		return nil, err
	}
	return a.withRules(name, doc)
}

// read reads a record and tells what in it is of no effect.
func (a *app) read(name string, data []byte, v record.Values) (*record.Document, error) {
	doc, err := record.Read(data, name, v)
	if err != nil {
		return nil, err
	}
	for _, w := range doc.Warnings() {
		a.complain(a.say("cli/problem.warning", "what", w.Report(a.language)))
	}
	return doc, nil
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
	engine, err := a.open(region, sys)
	return &file{name: name, doc: doc, engine: engine}, err
}

// assess is the whole answer to a file.
func (a *app) assess(f *file) *result.Result {
	r := f.engine.Assess(f.doc.Job(), a.today)
	r.File = f.name
	return r
}

// explained is the whole answer with what decided its findings.
func (a *app) explained(f *file) *result.Result {
	r := f.engine.Judge(f.doc.Job(), a.today).Explained()
	r.File = f.name
	return r
}
