package cli

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/record"
	"underfoot/assess/schema"
	"underfoot/cmd/internal/disk"
)

func (a *app) setCommand() *cobra.Command {
	c := a.describe(&cobra.Command{
		Use:  "set FILE ADDRESS=VALUE...",
		Args: atLeast(2, message.New("cli/set.arguments")),
		RunE: func(_ *cobra.Command, given []string) error { return a.set(given[0], given[1:]) },
	}, "cli/set.help.")
	return c
}

// set changes the record under its lock: all of the answers, or none.
func (a *app) set(name string, pairs []string) error {
	e, err := a.bare()
	if err != nil {
		return err
	}
	return disk.Save(name, func(current []byte) ([]byte, error) {
		doc, err := a.openOrNew(name, current, e.Catalogue)
		if err != nil {
			return nil, err
		}
		var problems assess.Problems
		for _, pair := range pairs {
			problems = append(problems, a.setOne(doc, e.Catalogue, pair)...)
		}
		if err := problems.Err(); err != nil {
			return nil, err
		}
		return doc.Bytes()
	})
}

// openOrNew reads the record, or starts one for the flags given.
func (a *app) openOrNew(name string, data []byte, c *question.Catalogue) (*record.Document, error) {
	if len(data) > 0 {
		return a.read(name, data, c)
	}
	region := a.region
	if region == "" {
		region = "us"
	}
	return record.New(c, region, a.system(), a.today), nil
}

func (a *app) setOne(doc *record.Document, c *question.Catalogue, pair string) assess.Problems {
	target, value, ok := strings.Cut(pair, "=")
	if !ok {
		return refuse(pair, message.New("cli/set.no_pair"), message.New("cli/set.pair_hint"))
	}
	target, value = strings.TrimSpace(target), strings.TrimSpace(value)
	if handled, problems := setWhole(doc, c, target, value); handled {
		return problems
	}
	target, detail := cutDetail(target)
	addr, q, problems := locate(doc, c, target)
	if len(problems) > 0 {
		return problems
	}
	answer, said := doc.Job().Answer(addr)
	if detail != "" {
		if !said {
			return refuse(target, message.New("cli/set.no_answer"), message.New("cli/set.set_first", "address", target))
		}
		if !withDetail(&answer, detail, value) {
			return refuse(pair, message.New("cli/set.no_basis", "given", strconv.Quote(value)),
				message.New("cli/set.bases", "list", strings.Join(assess.BasisWords(), ", ")))
		}
		return put(doc, addr, answer)
	}
	answer, problems = readAnswer(doc, c, q, value)
	if len(problems) > 0 {
		return problems
	}
	answer.On = a.today
	return put(doc, addr, answer)
}

// setWhole handles what is no single answer: a whole family answered none, a
// list answered none, an item dropped.
func setWhole(doc *record.Document, c *question.Catalogue, target, value string) (handled bool, problems assess.Problems) {
	words := strings.Split(target, ".")
	last := words[len(words)-1]
	if words[0] == "area" && len(words) == 2 {
		return true, asProblems(doc.AddArea(words[1], value), target)
	}
	if family := familyOf(c, target); family != "" {
		if reply := assess.ParseReply(value); value == "none" || reply != assess.Given {
			return true, setFamily(doc, c, target, family, reply)
		}
	}
	if value == "" {
		addr, _, problems := locate(doc, c, target)
		if len(problems) == 0 {
			doc.Forget(addr)
		}
		return true, problems
	}
	if value == "none" {
		if scope, ok := schema.ParseScope(last); ok && scope.Listed() {
			return true, setEmpty(doc, c, target, scope)
		}
	}
	if value == "remove" && len(words) >= 2 {
		if scope, ok := schema.ParseScope(words[len(words)-2]); ok && scope.Listed() {
			addr, _, problems := locate(doc, c, target+".kind")
			if len(problems) > 0 {
				return true, problems
			}
			if err := doc.DropItem(addr); err != nil {
				return true, refuse(target, message.Of(err), message.New("cli/set.items_hint"))
			}
			return true, nil
		}
	}
	return false, nil
}

// familyOf is the family that a target names with or without area and zone.
func familyOf(c *question.Catalogue, target string) string {
	for i := range c.Questions {
		if f := c.Questions[i].Decl.Family; f != "" && (target == f || strings.HasSuffix(target, "."+f)) {
			return f
		}
	}
	return ""
}

// setFamily answers every member of a family: with none, or with a reply.
func setFamily(doc *record.Document, c *question.Catalogue, target, family string, reply assess.Reply) assess.Problems {
	first := slices.IndexFunc(c.Questions, func(q question.Question) bool { return q.Decl.Family == family })
	addr, _, problems := locate(doc, c, strings.TrimSuffix(target, family)+c.Questions[first].Decl.ID)
	if len(problems) > 0 {
		return problems
	}
	return asProblems(doc.PutFamily(addr.Area, addr.Zone, family, assess.Answer{Reply: reply}), target)
}

func setEmpty(doc *record.Document, c *question.Catalogue, target string, scope schema.Scope) assess.Problems {
	addr, _, problems := locate(doc, c, target+".complete")
	if len(problems) > 0 {
		return problems
	}
	if n := len(itemsAt(doc.Job(), addr, scope)); n > 0 {
		return refuse(target, message.New("cli/set.items", "n", n), message.New("cli/set.drop_hint", "list", target))
	}
	return put(doc, addr, assess.Answer{Set: schema.SetYes, Text: "yes"})
}

func itemsAt(job *assess.Job, addr schema.Address, scope schema.Scope) []assess.Item {
	zone := job.Area(addr.Area).Zone(addr.Zone)
	if zone == nil {
		return nil
	}
	return zone.Lists[scope]
}

// cutDetail takes `.basis`, `.with`, `.note` or `.on` off an address.
func cutDetail(target string) (address, detail string) {
	for _, d := range []string{"basis", "with", "note", "on"} {
		if before, ok := strings.CutSuffix(target, "."+d); ok && strings.Count(before, ".") >= 1 {
			return before, d
		}
	}
	return target, ""
}

// withDetail notes how an answer is known; ok is false for a basis that there
// is not.
func withDetail(a *assess.Answer, detail, value string) (ok bool) {
	switch detail {
	case "basis":
		a.Basis, ok = assess.ParseBasis(value)
		return ok
	case "with":
		a.With = value
	case "note":
		a.Note = value
	case "on":
		a.On = assess.Day(value)
	}
	return true
}

func locate(doc *record.Document, c *question.Catalogue, target string) (schema.Address, *question.Question, assess.Problems) {
	addr, err := schema.ParseAddress(target)
	if err != nil {
		return addr, nil, refuse(target, message.Of(err), message.New("cli/set.address_hint"))
	}
	q := c.Find(addr.Short())
	if q == nil {
		hint := message.New("cli/set.schema_hint")
		if near := nearest(c, addr.Short()); near != "" {
			hint = message.New("cli/hint.meant", "word", near)
		}
		return addr, nil, refuse(target, message.New("cli/set.no_question", "address", addr.Short()), hint)
	}
	if q.Decl.Scope.Listed() && addr.Item == "" {
		return addr, nil, refuse(target, message.New("cli/set.which", "topic", addr.Topic),
			message.New("cli/set.which_hint", "address", addr.Topic+"."+addr.Topic[:1]+"1."+addr.Field))
	}
	addr, err = doc.Job().Normal().Locate(addr)
	if err != nil {
		return addr, nil, refuse(target, message.Of(err), message.New("cli/set.place_hint", "address", addr.Short()))
	}
	return addr, q, nil
}

func nearest(c *question.Catalogue, id string) string {
	ids := make([]string, len(c.Questions))
	for i := range c.Questions {
		ids[i] = c.Questions[i].Decl.ID
	}
	return assess.Nearest(id, ids)
}

func readAnswer(doc *record.Document, c *question.Catalogue, q *question.Question, value string) (assess.Answer, assess.Problems) {
	if reply := assess.ParseReply(value); reply != assess.Given {
		return assess.Answer{Reply: reply}, nil
	}
	set, err := c.Read(q.Decl, value, doc.System())
	var unclear *quantity.Unclear
	var refused *question.Refused
	switch {
	case errors.As(err, &unclear):
		return assess.Answer{}, refuse(q.Decl.ID+"="+value, message.Of(unclear), message.New("cli/set.readings", "list", strings.Join(unclear.Readings, ", ")))
	case errors.As(err, &refused):
		return assess.Answer{}, refuse(q.Decl.ID+"="+value, refused.What, refused.Hint)
	case err != nil:
		return assess.Answer{}, refuse(q.Decl.ID+"="+value, message.Of(err), message.New("cli/set.example", "example", q.Text.Example))
	}
	return assess.Answer{Set: set, Text: value}, nil
}

func put(doc *record.Document, addr schema.Address, a assess.Answer) assess.Problems {
	return asProblems(doc.Put(addr, a), addr.String())
}

// asProblems is an error as problems with a place; none for no error.
func asProblems(err error, place string) assess.Problems {
	var problem *assess.Problem
	switch {
	case err == nil:
		return nil
	case errors.As(err, &problem):
		return assess.Problems{problem}
	}
	return refuse(place, message.Of(err), message.Message{})
}

func refuse(place string, what, hint message.Message) assess.Problems {
	return assess.Problems{{Kind: assess.Usage, Place: place, What: what, Hint: hint}}
}
