package cli

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/rules/pack"
)

// readPacks reads local packs and gives what is wrong with all of them.
func (a *app) readPacks(files []string) error {
	var problems assess.Problems
	for _, name := range files {
		p, err := readPack(name)
		var more assess.Problems
		switch {
		case errors.As(err, &more):
			problems = append(problems, more...)
		case err != nil:
			return err
		default:
			a.packs = append(a.packs, p)
		}
	}
	return problems.Err()
}

// readPack reads one pack, and no more of its file than a pack may have.
func readPack(name string) (*pack.Local, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, pack.MaxLocalBytes+1))
	if err != nil {
		return nil, unreadable(name, err)
	}
	return pack.ReadLocal(name, data)
}

func unreadable(name string, err error) error {
	return &assess.Problem{Kind: assess.IO, Place: name, What: message.New("cli/check.pack"), Hint: message.New("cli/check.pack_hint"), Cause: err}
}

// packRegions are the region that was named, or all in which the packs hold.
func (a *app) packRegions() []string {
	if a.region != "" {
		return []string{a.region}
	}
	all := slices.Clone(figure.Regions)
	for _, p := range a.packs {
		all = slices.DeleteFunc(all, func(r string) bool { return !slices.Contains(p.Regions(), r) })
	}
	if len(all) == 0 { // the loader says what is wrong
		return figure.Regions[:1]
	}
	return all
}

func (a *app) rulesCheck() *cobra.Command {
	return a.describe(&cobra.Command{
		Use: "check [PACK...]",
		RunE: func(_ *cobra.Command, files []string) error {
			if err := a.readPacks(files); err != nil {
				return err
			}
			var problems assess.Problems
			for _, region := range a.packRegions() {
				e, err := a.open(region, a.system())
				var more assess.Problems
				switch {
				case errors.As(err, &more):
					problems = merged(problems, more)
				case err != nil:
					return err
				default:
					fmt.Fprintf(a.Out, "%-6s %s\n", region, a.say("cli/check.sound", "rules", len(e.Pack.Rules)))
				}
			}
			return problems.Err()
		},
	}, "cli/check.help.")
}

// merged leaves out problems that another region has too.
func merged(list, more assess.Problems) assess.Problems {
	for _, p := range more {
		if !slices.ContainsFunc(list, func(q *assess.Problem) bool { return q.Error() == p.Error() }) {
			list = append(list, p)
		}
	}
	return list
}

func (a *app) rulesTest() *cobra.Command {
	return a.describe(&cobra.Command{
		Use: "test [PACK...]",
		RunE: func(_ *cobra.Command, files []string) error {
			if err := a.readPacks(files); err != nil {
				return err
			}
			failed := 0
			for _, region := range a.packRegions() {
				n, err := a.testRegion(region)
				if err != nil {
					return err
				}
				failed += n
			}
			if failed > 0 {
				return &assess.Problem{Kind: assess.Invalid, What: message.New("cli/test.failed", "n", failed), Hint: message.New("cli/test.failed_hint")}
			}
			return nil
		},
	}, "cli/test.help.")
}

// testRegion runs the cases of one region and prints those that fail.
func (a *app) testRegion(region string) (failed int, err error) {
	e, err := a.open(region, a.system())
	if err != nil {
		return 0, err
	}
	failures, ran := e.Test()
	fmt.Fprintf(a.Out, "%-6s %s\n", region, a.say("cli/test.ran", "ran", ran, "rules", len(e.Pack.Tested()), "failed", len(failures)))
	for _, f := range failures {
		got := cmp.Or(f.Got, a.language.Say(f.Fault))
		fmt.Fprintf(a.Out, "  %s\n    %s\n", a.say("cli/test.case", "rule", f.Rule, "case", f.Case, "want", f.Want, "got", got), f.Explain(a.language))
	}
	return len(failures), nil
}
