package cli

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/text"
)

func (a *app) assessCommand() *cobra.Command {
	var asJSON, all, gate bool
	var why string
	c := &cobra.Command{
		Use:   "assess FILE...",
		Short: "Print what the answers in a record point to",
		Example: `  underfoot assess kitchen.yaml
  underfoot assess --json *.yaml            one document a line
  underfoot assess --gate kitchen.yaml && echo 'nothing speaks against starting'
  underfoot assess --why layer-never-a-base@l1 kitchen.yaml
  cat kitchen.yaml | underfoot assess -`,
		Args: args(cobra.MinimumNArgs(1), "name a record, or - for the standard input"),
		RunE: func(_ *cobra.Command, files []string) error {
			if why != "" && (asJSON || gate || all) {
				return usage("--why goes with no other flag of assess", "see: underfoot assess --help")
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
				if gate && r.Verdict > assess.Prepare {
					return errGate
				}
				return nil
			})
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the findings as JSON, one document a line")
	c.Flags().BoolVar(&all, "all", false, "also what is in order, the calculations, the answers and the sources")
	c.Flags().StringVar(&why, "why", "", "print what decided the findings of one rule, by its id, or one finding, by rule@subject")
	c.Flags().BoolVar(&gate, "gate", false, "exit with 4 unless the verdict is ready or prepare")
	return c
}

// each runs over several files, reports what is wrong with each, and returns
// the error with the highest exit code.
func (a *app) each(files []string, do func(string) error) error {
	var worst error
	for _, name := range files {
		err := do(name)
		if len(files) > 1 && !errors.Is(err, errGate) {
			report(a.Err, a.language, err)
		}
		if codeOf(err) > codeOf(worst) {
			worst = err
		}
	}
	if len(files) > 1 && worst != nil && !errors.Is(worst, errGate) {
		return &told{worst}
	}
	return worst
}

// told is an error that has been reported already.
type told struct{ error }

// Unwrap is the error itself, for its exit code.
func (t *told) Unwrap() error { return t.error }

func (a *app) print(r *assess.Result, asJSON, all bool) error {
	if asJSON {
		return data.Write(a.Out, r, data.Options{All: all})
	}
	return a.printText(r, "", all)
}

// printBrief prints the outcome alone, and where the rest of it is.
func (a *app) printBrief(r *assess.Result, name string) error {
	v := reports.NewView(r, reports.Options{Units: r.Units})
	v.Sections = slices.DeleteFunc(v.Sections, func(s reports.Section) bool {
		return s.ID != reports.SummarySection && s.ID != reports.RoomsSection
	})
	if err := text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color()}); err != nil {
		return err
	}
	fmt.Fprintf(a.Err, "\nThe findings: underfoot assess %s\nOn paper:     underfoot report %s -o findings.xlsx\n", name, name)
	return nil
}

// printText prints the findings for a terminal or a pipe, a note first.
func (a *app) printText(r *assess.Result, note string, all bool) error {
	v := reports.NewView(r, reports.Options{Units: r.Units, Note: note})
	return text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color(), All: all})
}
