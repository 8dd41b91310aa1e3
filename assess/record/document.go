// Package record turns the bytes of a record file into a job and back. The
// file belongs to the person who keeps it: what the program does not know
// stays as it is, comments stay where they were, and a file that nobody
// changed gives the same bytes.
package record

import (
	"bytes"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// Format is what the first key of every record says.
const Format = "underfoot.assessment/1"

// Values reads and writes the text of one answer. The catalogue of questions
// is one; a record knows the schema and no question.
type Values interface {
	// Schema is every fact, asked and derived, in the order in which a record writes them.
	Schema() *schema.Schema
	// Read reads one value, a range of them, or several choices joined by ", ".
	Read(d *schema.Declaration, text string, sys quantity.System) (schema.Set, error)
	// Write is the text that Read gives back.
	Write(d *schema.Declaration, s schema.Set, sys quantity.System) string
}

// A Document is one record: the job that it holds and the file that it came
// from. It is not safe for use by several goroutines at once.
type Document struct {
	values   Values
	source   []byte     // as read; nil for a new document
	tree     *yaml.Node // the document node of source, never changed but by renaming
	was      *assess.Job
	job      *assess.Job // the same as was until something is changed
	renamed  bool        // tree differs from source
	warnings assess.Problems
}

// New is an empty record with its header.
func New(v Values, region string, sys quantity.System, visited assess.Day) *Document {
	return &Document{
		values: v,
		tree:   &yaml.Node{Kind: yaml.DocumentNode, Content: []*yaml.Node{newMapping()}},
		was:    &assess.Job{},
		job:    &assess.Job{Region: region, Units: sys.String(), Visited: visited},
	}
}

// Job is a copy of what the record says.
func (d *Document) Job() *assess.Job { return d.job.Clone() }

// Warnings are what was read but not followed: unknown keys, which are kept in
// the file without effect, and lists that do not apply and name things.
func (d *Document) Warnings() assess.Problems { return d.warnings }

// System is the system in which the record's bare numbers are read: that of
// its units, or else of its region.
func (d *Document) System() quantity.System { return system(d.job) }

func system(j *assess.Job) quantity.System {
	switch j.Units {
	case quantity.Metric.String():
		return quantity.Metric
	case "":
		return figure.System(j.Region)
	}
	return quantity.US
}

// clone is a copy that can be changed without changing d.
func (d *Document) clone() *Document {
	c := *d
	c.source = bytes.Clone(d.source)
	c.tree, c.was, c.job = copyTree(d.tree), d.was.Clone(), d.job.Clone()
	return &c
}

// change is the job to change: a copy the first time, so that what was read
// stays known.
func (d *Document) change() *assess.Job {
	if d.job == d.was {
		d.job = d.was.Clone()
	}
	return d.job
}
