package pack

import (
	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/message"
)

// A place is where a record, or one of its values, stands: a name in our own
// files, a line and a column in a local pack.
type place struct {
	file string    // and record
	doc  *document // of a local pack, else nil
	node *node
}

// key is the value of a key, or the record where it does not have the key.
func (p place) key(name string) place {
	if p.node != nil {
		if v := p.node.fields[name]; v != nil {
			p.node = v
		}
	}
	return p
}

// name is the key itself, where the record has it.
func (p place) name(key string) place {
	if p.node != nil {
		if at, ok := p.node.keys[key]; ok {
			p.node = &node{at: at}
		}
	}
	return p
}

// item is one value of a list, or the list where it has no such value.
func (p place) item(i int) place {
	if p.node != nil && i < len(p.node.items) {
		p.node = p.node.items[i]
	}
	return p
}

// text is the place of the first character of a text, behind its quotes.
func (p place) text() condition.Place {
	if p.doc == nil {
		return condition.Place{File: p.file}
	}
	return p.doc.place(p.node.text)
}

// problem is what is wrong there, with the line where it has one.
func (p place) problem(what, hint message.Message) *assess.Problem {
	out := &assess.Problem{Kind: assess.Invalid, Place: p.file, What: what, Hint: hint}
	if p.doc != nil {
		out.Place, out.Lines = p.doc.place(p.node.at).String(), p.doc.underline(p.node.at)
	}
	return out
}
