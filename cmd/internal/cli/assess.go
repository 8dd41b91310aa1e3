package cli

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/text"
)

func (a *app) assessCommand() *cobra.Command {
	var asJSON, all, gate bool
	var why string
	c := a.describe(&cobra.Command{
		Use:  "assess FILE...",
		Args: atLeast(1, message.New("cli/assess.arguments")),
		RunE: func(_ *cobra.Command, files []string) error {
			if why != "" && (asJSON || gate || all) {
				return usage(message.New("cli/assess.why_alone"), message.New("cli/hint.help", "command", "underfoot assess"))
			}
			return a.each(files, func(name string) error {
				f, err := a.load(name)
				if err != nil {
					return err
				}
				if why != "" {
					return a.why(f, why)
				}
				r := a.assess(f)
				if err := a.print(r, asJSON, all); err != nil {
					return err
				}
				if gate && r.Verdict > result.Prepare {
					return errGate
				}
				return nil
			})
		},
	}, "cli/assess.help.")
	c.Flags().BoolVar(&asJSON, "json", false, a.say("cli/assess.flag.json"))
	c.Flags().BoolVar(&all, "all", false, a.say("cli/assess.flag.all"))
	c.Flags().StringVar(&why, "why", "", a.say("cli/assess.flag.why"))
	c.Flags().BoolVar(&gate, "gate", false, a.say("cli/assess.flag.gate"))
	return c
}

// each runs over several files, reports what is wrong with each, and returns
// the error with the highest exit code.
func (a *app) each(files []string, do func(string) error) error {
	var worst error
	for _, name := range files {
		err := do(name)
		if len(files) > 1 && !errors.Is(err, errGate) {
			a.report(err)
		}
		if codeOf(err) > codeOf(worst) {
			worst = err
		}
	}
	if len(files) > 1 && worst != nil && !errors.Is(worst, errGate) {
		return &reported{worst}
	}
	return worst
}

// reported is an error that has been reported already.
type reported struct{ error }

// Unwrap is the error itself, for its exit code.
func (t *reported) Unwrap() error { return t.error }

func (a *app) print(r *result.Result, asJSON, all bool) error {
	if asJSON {
		return data.Write(a.Out, r, data.Options{All: all})
	}
	return a.printText(r, "", all)
}

// printBrief prints the outcome alone, and where the rest of it is.
func (a *app) printBrief(r *result.Result, name string) error {
	v := reports.NewView(r, reports.Options{Units: r.Units})
	v.Sections = slices.DeleteFunc(v.Sections, func(s reports.Section) bool {
		return s.ID != reports.SummarySection && s.ID != reports.RoomsSection
	})
	if err := text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color()}); err != nil {
		return err
	}
	fmt.Fprintf(a.Err, "\n%s\n%s\n", a.say("cli/walk.findings", "file", name), a.say("cli/walk.paper", "file", name))
	return nil
}

// printText prints the findings for a terminal or a pipe, a note first.
func (a *app) printText(r *result.Result, note string, all bool) error {
	v := reports.NewView(r, reports.Options{Units: r.Units, Note: note})
	return text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color(), All: all})
}
