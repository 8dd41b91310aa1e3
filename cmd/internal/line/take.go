package line

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
	"underfoot/rules/interview"
)

// An option is one numbered choice: a word to read, or a member of a family.
type option struct{ word, label string }

// options are what can be picked by number.
func (a *Asker) options(p interview.Prompt) []option {
	var list []option
	switch p.Form {
	case interview.Family:
		for _, q := range p.Members {
			list = append(list, option{q.Decl.ID, q.Text.Ask})
		}
		return append(list, option{"none", a.Language.Text("interview/replies.none")})
	case interview.List:
		if len(p.Items) == 0 {
			return []option{{"add", a.Language.Text("interview/replies.add_first")}, {"yes", a.Language.Text("interview/replies.empty")}}
		}
		list = []option{{"add", a.Language.Text("interview/replies.add")}, {"yes", a.Language.Text("interview/replies.complete")}}
		for i, name := range p.Items {
			list = append(list, option{fmt.Sprintf("drop %d", i+1), a.Language.Text("interview/replies.drop") + " " + name})
		}
		return list
	}
	for _, c := range p.Question.Decl.Choices {
		label := c
		if text := p.Question.Text.Choices[c]; text != "" {
			label = text
		}
		list = append(list, option{c, label})
	}
	return list
}

// take reads a line as an answer; a problem is what to tell the person.
func (a *Asker) take(p interview.Prompt, text string) (changes []interview.Change, problem string, err error) {
	words := a.pick(p, text)
	reply := assess.ParseReply(strings.ToLower(text))
	switch {
	case p.Form == interview.List && reply == assess.Given:
		return a.takeList(p, words)
	case p.Form == interview.Family:
		return a.takeFamily(p, words, reply)
	case reply != assess.Given:
		return a.Session.Answer(p, assess.Answer{Reply: reply}), "", nil
	}
	set, err := a.Session.Catalogue.Read(p.Question.Decl, words, a.System)
	if err != nil {
		return a.again(p, err)
	}
	answer := assess.Answer{Set: set, Text: words}
	if p.WantsBasis() {
		if answer.Basis, err = a.basis(); err != nil {
			return nil, "", err
		}
	}
	return a.Session.Answer(p, answer), "", nil
}

// pick puts the words of numbered options in place of their numbers, where
// numbers cannot be the answer itself.
func (a *Asker) pick(p interview.Prompt, text string) string {
	list := a.options(p)
	if len(list) == 0 {
		return text
	}
	parts := strings.Split(text, ",")
	for i, part := range parts {
		part = strings.TrimSpace(part)
		if n, err := strconv.Atoi(part); err == nil && n >= 1 && n <= len(list) {
			part = list[n-1].word
		}
		parts[i] = part
	}
	return strings.Join(parts, ", ")
}

func (a *Asker) takeList(p interview.Prompt, word string) ([]interview.Change, string, error) {
	if n, err := strconv.Atoi(strings.TrimPrefix(strings.ToLower(word), "drop ")); err == nil && n >= 1 && n <= len(p.Items) {
		return a.Session.Drop(p, n-1), "", nil
	}
	switch strings.ToLower(word) {
	case "add":
		return a.Session.Add(p), "", nil
	case "yes", "none":
		return a.Session.Answer(p, assess.Answer{Set: schema.SetYes, Text: "yes"}), "", nil
	}
	return nil, a.Language.Text("line/none.list", "given", strconv.Quote(word)), nil
}

// takeFamily says no of every member that is not named, once any is named or
// none is said.
func (a *Asker) takeFamily(p interview.Prompt, words string, reply assess.Reply) ([]interview.Change, string, error) {
	if reply != assess.Given {
		return a.Session.AnswerFamily(p, slices.Repeat([]assess.Answer{{Reply: reply}}, len(p.Members))), "", nil
	}
	so := map[int]logic.Truth{}
	for _, word := range strings.Split(words, ",") {
		word, doubt := strings.CutPrefix(strings.TrimSpace(word), "?")
		i := member(p, a.pick(p, word))
		switch {
		case i >= 0 && doubt:
			so[i] = logic.Open
		case i >= 0:
			so[i] = logic.Yes
		case !strings.EqualFold(words, "none"):
			return nil, a.Language.Text("line/none.family", "given", strconv.Quote(word)), nil
		}
	}
	return a.Session.AnswerFamily(p, p.MemberAnswers(func(i int) logic.Truth {
		if t, said := so[i]; said {
			return t
		}
		return logic.No
	})), "", nil
}

func member(p interview.Prompt, word string) int {
	for i, q := range p.Members {
		_, field, _ := strings.Cut(q.Decl.ID, ".")
		if word == q.Decl.ID || word == field {
			return i
		}
	}
	return -1
}

// again says what is wrong with a value. Where a number could be read in more
// ways than one the person picks a reading.
func (a *Asker) again(p interview.Prompt, err error) ([]interview.Change, string, error) {
	var unclear *quantity.Unclear
	if !errors.As(err, &unclear) {
		return nil, a.describe(err), nil
	}
	fmt.Fprintf(a.Out, "%s\n%s\n", a.describe(err), a.Language.Text("interview/help.unclear"))
	for i, r := range unclear.Readings {
		fmt.Fprintf(a.Out, "  %2d  %s\n", i+1, r)
	}
	text, err := a.read()
	if err != nil {
		return nil, "", err
	}
	if n, bad := strconv.Atoi(text); bad == nil && n >= 1 && n <= len(unclear.Readings) {
		text = unclear.Readings[n-1]
	}
	return a.take(p, text)
}

func (a *Asker) describe(err error) string {
	var refused *question.Refused
	if errors.As(err, &refused) {
		return refused.What.String() + "\n  " + refused.Hint.String()
	}
	return a.Language.Say(message.Of(err))
}

// basis asks how an answer is known.
func (a *Asker) basis() (assess.Basis, error) {
	bases := interview.BasisChoices()
	fmt.Fprintln(a.Out, a.Language.Text("interview/basis.ask"))
	for i, b := range bases {
		fmt.Fprintf(a.Out, "  %2d  %s\n", i+1, a.Language.Text("interview/basis."+b.String()))
	}
	for {
		text, err := a.read()
		if err != nil {
			return assess.NoBasis, err
		}
		if n, bad := strconv.Atoi(text); bad == nil && n >= 1 && n <= len(bases) {
			return bases[n-1], nil
		}
		if b, ok := assess.ParseBasis(strings.ToLower(text)); ok {
			return b, nil
		}
		a.print("line/none.basis", "given", strconv.Quote(text), "list", strings.Join(assess.BasisWords(), ", "))
	}
}
