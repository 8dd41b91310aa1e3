package cli

import (
	"cmp"

	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/text"
)

func (a *app) compareCommand() *cobra.Command {
	var asJSON, all bool
	c := a.describe(&cobra.Command{
		Use:  "compare OLD NEW",
		Args: exactly(2, message.New("cli/compare.arguments")),
		RunE: func(_ *cobra.Command, files []string) error { return a.compare(files[0], files[1], asJSON, all) },
	}, "cli/compare.help.")
	c.Flags().BoolVar(&asJSON, "json", false, a.say("cli/compare.flag.json"))
	c.Flags().BoolVar(&all, "all", false, a.say("cli/compare.flag.all"))
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
	before := now.engine.Judge(first, cmp.Or(first.Visited, a.today))
	result := now.engine.Judge(second, a.today).Compare(before)
	result.Old.File, result.New.File = old.name, now.name
	if asJSON {
		return data.WriteComparison(a.Out, result, data.Options{})
	}
	v := reports.NewComparison(result, reports.Options{Units: result.New.Units})
	return text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color(), All: all})
}
