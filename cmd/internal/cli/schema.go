package cli

import (
	"github.com/spf13/cobra"

	"underfoot/assess/record"
)

func (a *app) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "schema",
		Short:   "Print the JSON Schema of a record, for editors",
		Example: `  underfoot schema > underfoot.schema.json`,
		Args:    args(cobra.NoArgs, "schema takes no arguments"),
		RunE: func(*cobra.Command, []string) error {
			e, err := a.bare()
			if err != nil {
				return err
			}
			schema, err := record.JSONSchema(e.Catalogue)
			if err != nil {
				return err
			}
			_, err = a.Out.Write(schema)
			return err
		},
	}
}
