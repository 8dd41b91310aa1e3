package cli

import (
	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/assess/record"
)

func (a *app) schemaCommand() *cobra.Command {
	return a.describe(&cobra.Command{
		Use:  "schema",
		Args: none(message.New("cli/schema.arguments")),
		RunE: func(*cobra.Command, []string) error {
			e, err := a.bare()
			if err != nil {
				return err
			}
			schema, err := record.JSONSchema(e.Catalogue, a.language)
			if err != nil {
				return err
			}
			_, err = a.Out.Write(schema)
			return err
		},
	}, "cli/schema.help.")
}
