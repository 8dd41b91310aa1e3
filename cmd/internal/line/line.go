// Package line holds an interview in plain lines: for a pipe, a dumb terminal,
// a screen reader. The end of the input stops it and takes nothing as answered.
package line

import (
	"bufio"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
	"underfoot/rules/interview"
)

// ErrStopped says that the person stopped, or the input ended, before the end.
var ErrStopped = errors.New("stopped before the end")

// An Asker asks on lines.
type Asker struct {
	In       io.Reader
	Out      io.Writer
	Session  *interview.Session
	Language *message.Language
	System   quantity.System
	Save     func([]interview.Change) error // called after every answer
	lines    *bufio.Scanner
	stage    string
	settled  bool
}

// Run asks until nothing is left to ask. It returns ErrStopped when the person
// stops or the input ends, and whatever Save returns.
func (a *Asker) Run(ctx context.Context) error {
	a.begin()
	a.print("line/keys")
	p, more := a.Session.Next()
	for more {
		if err := ctx.Err(); err != nil {
			return err
		}
		a.heading(p)
		changes, move, err := a.ask(p)
		if err != nil {
			return err
		}
		if move == goBack {
			if before, ok := a.Session.Back(); ok {
				p = before
				continue
			}
			a.print("line/first")
			continue
		}
		if err := a.Save(changes); err != nil {
			return err
		}
		if err := a.Session.Alarm(changes); err != nil {
			return err
		}
		p, more = a.Session.Next()
	}
	fmt.Fprintf(a.Out, "\n%s\n", a.Language.Text("interview/progress.end"))
	return nil
}

func (a *Asker) begin() {
	a.lines = bufio.NewScanner(a.In)
	a.lines.Buffer(make([]byte, 0, 4096), 1<<16)
}

// print prints a sentence on lines of its own.
func (a *Asker) print(key string, pairs ...any) { fmt.Fprintln(a.Out, a.Language.Text(key, pairs...)) }

// heading prints the stage where it changes, and the question.
func (a *Asker) heading(p interview.Prompt) {
	if title := a.Session.StageTitle(p.Stage); title != a.stage {
		a.stage = title
		fmt.Fprintln(a.Out)
		a.print("line/stage", "stage", title)
	}
	if _, waiting, _ := a.Session.Progress(); waiting == 0 && !a.settled {
		a.settled = true
		fmt.Fprintln(a.Out, a.Language.Text("interview/progress.settled"))
	}
	fmt.Fprintf(a.Out, "\n%s%s\n", about(p.Address), p.Text())
	for _, item := range p.Items {
		fmt.Fprintf(a.Out, "    %s\n", item)
	}
	for i, o := range a.options(p) {
		fmt.Fprintf(a.Out, "  %2d  %s\n", i+1, o.label)
	}
	if p.Answered {
		fmt.Fprintf(a.Out, "  %s\n", a.Language.Text("line/before", "label", a.Language.Text("interview/help.before"), "answer", a.standing(p)))
	}
}

func (a *Asker) standing(p interview.Prompt) string {
	if p.Form == interview.Family {
		var said []string
		for i, stood := range p.Stood {
			if stood.Reply != assess.Given || stood.Set == schema.SetYes {
				said = append(said, p.Members[i].Text.Label+": "+cmp.Or(stood.Reply.String(), stood.Text))
			}
		}
		return cmp.Or(strings.Join(said, "; "), a.Language.Text("line/none.none"))
	}
	if p.Before.Reply != assess.Given {
		return p.Before.Reply.String()
	}
	return p.Before.Text
}

// about names the item that a question is about: `layer l2: `.
func about(addr schema.Address) string {
	if addr.Item == "" {
		return ""
	}
	return addr.Topic + " " + addr.Item + ": "
}

type move uint8

const (
	goOn move = iota
	goBack
)

// ask reads lines until one of them answers the prompt.
func (a *Asker) ask(p interview.Prompt) ([]interview.Change, move, error) {
	for {
		text, err := a.read()
		if err != nil {
			return nil, goOn, err
		}
		switch strings.ToLower(text) {
		case "":
			a.print("line/nothing")
			continue
		case "?", "help":
			a.explain(p)
			continue
		case "back":
			return nil, goBack, nil
		case "stop", "quit":
			return nil, goOn, ErrStopped
		}
		changes, problem, err := a.take(p, text)
		if err != nil {
			return nil, goOn, err
		}
		if problem == "" {
			return changes, goOn, nil
		}
		fmt.Fprintln(a.Out, problem)
	}
}

// read is the next line; the end of the input is a stop.
func (a *Asker) read() (string, error) {
	fmt.Fprint(a.Out, "> ")
	if !a.lines.Scan() {
		fmt.Fprintln(a.Out)
		if err := a.lines.Err(); err != nil {
			return "", err
		}
		return "", ErrStopped
	}
	return strings.TrimSpace(a.lines.Text()), nil
}

func (a *Asker) explain(p interview.Prompt) {
	help := func(name string) string { return a.Language.Text("interview/help." + name) }
	for _, part := range []struct{ head, text string }{
		{help("why"), p.Why()}, {help("how"), p.Question.Text.How}, {help("limits"), p.Question.Text.Limits},
		{help("who"), p.Question.Text.Who}, {help("example"), p.Question.Text.Example},
	} {
		if part.text != "" {
			fmt.Fprintf(a.Out, "  %s\n", a.Language.Text("line/part", "head", part.head, "text", part.text))
		}
	}
}
