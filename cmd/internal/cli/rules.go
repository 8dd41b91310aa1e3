package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/rules"
	"underfoot/rules/pack"
)

func (a *app) rulesCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "rules",
		Short: "List the rules, show one with its sources, run their own cases",
		Example: `  underfoot rules list
  underfoot rules show asbestos-presumed-layer
  underfoot rules test --region uk
  underfoot rules check our-town.toml`,
	}
	c.AddCommand(a.rulesList(), a.rulesShow(), a.rulesBook(), a.rulesCheck(), a.rulesTest())
	return c
}

// openRules opens the rules of the region that was named, or else of the first
// in which the packs hold.
func (a *app) openRules() (*rules.Engine, error) { return a.open(a.packRegions()[0], a.system()) }

func (a *app) rulesList() *cobra.Command {
	return &cobra.Command{
		Use:   "list",
		Short: "One line for each rule: id, what an unknown does, what it does",
		Args:  args(cobra.NoArgs, "rules list takes no arguments"),
		RunE: func(*cobra.Command, []string) error {
			e, err := a.openRules()
			if err != nil {
				return err
			}
			for _, r := range e.Pack.Rules {
				fmt.Fprintf(a.Out, "%-36s %-8s %-8s %-10s %s\n", r.ID, r.Scope, r.Unknown, r.Protects, effects(r))
			}
			return nil
		},
	}
}

func effects(r *pack.Rule) string {
	var parts []string
	add := func(verb string, paths ...assess.PathID) {
		if len(paths) > 0 {
			parts = append(parts, verb+" "+words(paths))
		}
	}
	if r.Calls != assess.NoPath {
		add("calls", r.Calls)
	}
	add("permits", r.Permits...)
	add("bars", r.Bars...)
	if r.BarsThis {
		parts = append(parts, "bars the base that it looks at")
	}
	if len(parts) == 0 {
		return "adds a caution"
	}
	return strings.Join(parts, "; ")
}

func words(paths []assess.PathID) string {
	list := make([]string, len(paths))
	for i, p := range paths {
		list[i] = p.String()
	}
	return strings.Join(list, ", ")
}

func (a *app) rulesShow() *cobra.Command {
	return &cobra.Command{
		Use:   "show ID",
		Short: "One rule: its condition, texts, risk, cases and sources",
		Args:  args(cobra.ExactArgs(1), "name one rule; see: underfoot rules list"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			e, err := a.openRules()
			if err != nil {
				return nil, cobra.ShellCompDirectiveError
			}
			return ids(e.Pack), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, names []string) error {
			e, err := a.openRules()
			if err != nil {
				return err
			}
			r, err := findRule(e, names[0])
			if err != nil {
				return err
			}
			return a.show(e, r)
		},
	}
}

// findRule finds a rule, or says which one may have been meant.
func findRule(e *rules.Engine, id string) (*pack.Rule, error) {
	if r := e.Pack.Rule(id); r != nil {
		return r, nil
	}
	hint := "see: underfoot rules list"
	if near := assess.Nearest(id, ids(e.Pack)); near != "" {
		hint = "did you mean " + near + "? " + hint
	}
	return nil, usage("there is no rule "+id+" in region "+e.Figures.Region, hint)
}

func ids(p *pack.Pack) []string {
	list := make([]string, len(p.Rules))
	for i, r := range p.Rules {
		list[i] = r.ID
	}
	return list
}

func policies(r *pack.Rule) string {
	var parts []string
	for _, c := range r.UnknownWhen {
		parts = append(parts, fmt.Sprintf("%s when %s", c.Then, c.When))
	}
	return strings.Join(append(parts, string(r.Unknown)), "; else ")
}
