package cli

import (
	"cmp"

	"github.com/spf13/cobra"

	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/text"
	"underfoot/rules"
)

func (a *app) compareCommand() *cobra.Command {
	var asJSON, all bool
	c := &cobra.Command{
		Use:   "compare OLD NEW",
		Short: "Say what has changed between two visits, and what must be seen before it counts",
		Long: `compare judges two records by the rules of the second one and puts finding
beside finding: worse, new, unchanged, better, cured, or gone because what it
was about is no longer in the record. Rooms, zones and listed items are the same
where they have the same id. The first record's ages count to the day of its
visit. It ends with the acceptance list: what must be seen or measured before a
finding is taken as settled. The exit code is 0 whatever has changed.`,
		Example: `  underfoot compare kitchen-may.yaml kitchen-june.yaml
  underfoot compare --json kitchen-may.yaml kitchen-june.yaml`,
		Args: args(cobra.ExactArgs(2), "name two records, the earlier visit first"),
		RunE: func(_ *cobra.Command, files []string) error { return a.compare(files[0], files[1], asJSON, all) },
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the comparison as JSON")
	c.Flags().BoolVar(&all, "all", false, "also slight findings and those about what nobody has named")
	return c
}

func (a *app) compare(oldName, newName string, asJSON, all bool) error {
	old, err := a.load(oldName)
	if err != nil {
		return err
	}
	now, err := a.load(newName)
	if err != nil {
		return err
	}
	first, second := old.doc.Job(), now.doc.Job()
	result := now.engine.Compare(rules.Visit{Job: first, Day: cmp.Or(first.Visited, a.today)}, rules.Visit{Job: second, Day: a.today})
	result.Old.File, result.New.File = old.name, now.name
	if asJSON {
		return data.WriteComparison(a.Out, result, data.Options{})
	}
	v := reports.NewComparison(result, reports.Options{Units: result.New.Units})
	return text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color(), All: all})
}
