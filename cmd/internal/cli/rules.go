package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/rules"
	"underfoot/rules/pack"
)

func (a *app) rulesCommand() *cobra.Command {
	c := a.describe(&cobra.Command{
		Use: "rules",
	}, "cli/rules.help.")
	c.AddCommand(a.rulesList(), a.rulesShow(), a.rulesBook(), a.rulesCheck(), a.rulesTest())
	return c
}

// openRules opens the rules of the region that was named, or else of the first
// in which the packs hold.
func (a *app) openRules() (*rules.Engine, error) { return a.open(a.packRegions()[0], a.system()) }

func (a *app) rulesList() *cobra.Command {
	return a.describe(&cobra.Command{
		Use:  "list",
		Args: none(message.New("cli/list.arguments")),
		RunE: func(*cobra.Command, []string) error {
			e, err := a.openRules()
			if err != nil {
				return err
			}
			for _, r := range e.Pack.Rules {
				fmt.Fprintf(a.Out, "%-36s %-8s %-8s %-10s %s\n", r.ID, r.Scope, r.Unknown, r.Protects, a.effects(r))
			}
			return nil
		},
	}, "cli/list.help.")
}

// effects is what a rule does where it holds.
func (a *app) effects(r *pack.Rule) string {
	var parts []string
	if r.Calls != result.NoPath {
		parts = append(parts, a.say("cli/list.calls", "paths", r.Calls))
	}
	if len(r.Permits) > 0 {
		parts = append(parts, a.say("cli/list.permits", "paths", words(r.Permits)))
	}
	if len(r.Bars) > 0 {
		parts = append(parts, a.say("cli/list.bars", "paths", words(r.Bars)))
	}
	if r.BarsThis {
		parts = append(parts, a.say("cli/list.bars_this"))
	}
	if len(parts) == 0 {
		return a.say("cli/list.caution")
	}
	return strings.Join(parts, "; ")
}

func words(paths []result.PathID) string {
	list := make([]string, len(paths))
	for i, p := range paths {
		list[i] = p.String()
	}
	return strings.Join(list, ", ")
}

func (a *app) rulesShow() *cobra.Command {
	return a.describe(&cobra.Command{
		Use:  "show ID",
		Args: exactly(1, message.New("cli/show.arguments")),
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
	}, "cli/show.help.")
}

// findRule finds a rule, or says which one may have been meant.
func findRule(e *rules.Engine, id string) (*pack.Rule, error) {
	if r := e.Pack.Rule(id); r != nil {
		return r, nil
	}
	return nil, usage(message.New("cli/rules.none", "rule", id, "region", e.Figures.Region),
		meant(id, ids(e.Pack), message.New("cli/rules.see_list")))
}

func ids(p *pack.Pack) []string {
	list := make([]string, len(p.Rules))
	for i, r := range p.Rules {
		list[i] = r.ID
	}
	return list
}

// policies is what an unknown does: the first case that holds, else the last word.
func (a *app) policies(r *pack.Rule) string {
	text := string(r.Unknown)
	for _, c := range slices.Backward(r.UnknownWhen) {
		text = a.say("cli/show.policy", "policy", c.Then, "condition", c.When, "otherwise", text)
	}
	return text
}
