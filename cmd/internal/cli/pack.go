package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"

	"github.com/spf13/cobra"

	"underfoot/assess"
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
	return &assess.Problem{Kind: assess.IO, Place: name, What: message.Verbatim("the pack cannot be read"), Hint: message.Verbatim("name a TOML file after --pack"), Cause: err}
}

// packRegions are the region that was named, or all in which the packs hold.
func (a *app) packRegions() []string {
	if a.region != "" {
		return []string{a.region}
	}
	all := slices.Clone(regions)
	for _, p := range a.packs {
		all = slices.DeleteFunc(all, func(r string) bool { return !slices.Contains(p.Regions(), r) })
	}
	if len(all) == 0 { // the loader says what is wrong
		return regions[:1]
	}
	return all
}

func (a *app) rulesCheck() *cobra.Command {
	return &cobra.Command{
		Use:   "check [PACK...]",
		Short: "Load the rules of every region, with packs of your own, and print what is wrong",
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
					fmt.Fprintf(a.Out, "%-6s %d rules, nothing wrong\n", region, len(e.Pack.Rules))
				}
			}
			return problems.Err()
		},
	}
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
	return &cobra.Command{
		Use:   "test [PACK...]",
		Short: "Run the cases that stand beside the rules, or beside those of packs of your own",
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
				return &assess.Problem{Kind: assess.Invalid, What: message.Verbatim(fmt.Sprintf("%d cases failed", failed)), Hint: message.Verbatim("the rule or its case is wrong: ask which before changing either")}
			}
			return nil
		},
	}
}

// testRegion runs the cases of one region and prints those that fail.
func (a *app) testRegion(region string) (failed int, err error) {
	e, err := a.open(region, a.system())
	if err != nil {
		return 0, err
	}
	failures, ran := e.Test()
	fmt.Fprintf(a.Out, "%-6s %d cases of %d rules, %d failed\n", region, ran, len(e.Pack.Tested()), len(failures))
	for _, f := range failures {
		fmt.Fprintf(a.Out, "  %s: %s: want %s, got %s\n    %s\n", f.Rule, f.Case, f.Want, f.Got, f.Explain)
	}
	return len(failures), nil
}
