// Package cli is the command tree: flags in, exit code out. Each command is a
// thin shell over the rooms below.
package cli

import (
	"context"
	"errors"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/cmd/internal/console"
	"underfoot/rules/pack"
)

// app is what all commands share: the streams, the day, the global flags.
type app struct {
	*console.Streams
	today    assess.Day
	region   string
	units    string
	lang     string
	language *message.Language
	day      string
	plain    bool     // --no-color
	files    []string // --pack
	packs    []*pack.Local
	engines  engines
}

// Run runs the command line and returns the exit code.
func Run(ctx context.Context, s *console.Streams, args []string) int {
	a := &app{Streams: s, engines: engines{}, language: message.English()}
	root := a.root()
	root.SetArgs(args)
	root.SetIn(s.In)
	root.SetOut(s.Out)
	root.SetErr(s.Err)
	err := root.ExecuteContext(ctx)
	if failed := s.Out.Problem(); failed != nil {
		err = failed
	}
	var problem *assess.Problem
	if err != nil && !errors.As(err, &problem) && strings.HasPrefix(err.Error(), "unknown command") {
		err = usage(err.Error(), "see: underfoot help")
	}
	report(s.Err, a.language, err)
	return codeOf(err)
}

func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "underfoot",
		Short: "Decide whether an old floor can carry tile",
		Long: `underfoot asks what lies on and under an old floor, computes what can be
computed, and says what may stay, what must be removed, stiffened, dried,
flattened, isolated, covered or tested before the first tile is laid.

It screens stated answers. It does not replace a laboratory, an engineer, the
local code or the instructions of the products that are used.`,
		Example: `  underfoot demo                          the whole way on an invented job
  underfoot walk kitchen.yaml             be asked, answer by answer
  underfoot assess kitchen.yaml           what the answers point to
  underfoot report kitchen.yaml -o kitchen.xlsx`,
		SilenceUsage:      true,
		SilenceErrors:     true,
		PersistentPreRunE: func(*cobra.Command, []string) error { return a.settle() },
	}
	f := root.PersistentFlags()
	f.StringVar(&a.units, "units", "", "units to read and print: us or mm (default: as the record says)")
	f.StringVar(&a.lang, "lang", "en", "language of questions and reports")
	f.StringVar(&a.day, "today", "", "the day to count ages from, as 2026-05-04 (default: SOURCE_DATE_EPOCH, else the clock)")
	f.StringVar(&a.region, "region", "", "rules of this region: us, ca, uk, ie, au, nz, de, eu, other (default: as the record says)")
	f.StringArrayVar(&a.files, "pack", nil, "a pack of local rules, a TOML file (again for several)")
	f.BoolVar(&a.plain, "no-color", false, "print without color")
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		return usage(err.Error(), "see: "+c.CommandPath()+" --help")
	})
	root.AddCommand(a.demoCommand(), a.walkCommand(), a.assessCommand(), a.compareCommand(), a.reportCommand(), a.setCommand(),
		a.schemaCommand(), a.rulesCommand(), a.joistCommand(), &cobra.Command{Use: "exit-codes", Short: "What the exit codes say", Long: exitHelp})
	a.complete(root)
	return root
}

// settle reads the global flags that have a value to check.
func (a *app) settle() error {
	var err error
	if a.today, err = a.Today(a.day, time.Now); err != nil {
		return err
	}
	if a.units != "" && a.units != "us" && a.units != "mm" {
		return usage("--units "+a.units+" is not a system of units", "it is us or mm")
	}
	if a.region != "" && !slices.Contains(regions, a.region) {
		return usage("--region "+a.region+" is not a region", "one of: us, ca, uk, ie, au, nz, de, eu, other")
	}
	var ok bool
	if a.language, ok = message.Open(a.lang); !ok {
		a.language = message.English()
		return usage("--lang "+a.lang+" is not there yet", "the texts are in English: --lang en")
	}
	if a.plain {
		a.NoColor()
	}
	return a.readPacks(a.files)
}

var regions = []string{"us", "ca", "uk", "ie", "au", "nz", "de", "eu", "other"}

func (a *app) system() quantity.System {
	if a.units == "mm" {
		return quantity.Metric
	}
	return quantity.US
}

// args wraps cobra's argument checks, so that a wrong count is a usage error.
func args(check cobra.PositionalArgs, hint string) cobra.PositionalArgs {
	return func(c *cobra.Command, given []string) error {
		if err := check(c, given); err != nil {
			return usage(err.Error(), hint)
		}
		return nil
	}
}

// complete gives flags and files their completions.
func (a *app) complete(root *cobra.Command) {
	fixed := func(words ...string) func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)
	}
	for flag, words := range map[string][]string{"units": {"us", "mm"}, "region": regions, "lang": {"en"}} {
		if err := root.RegisterFlagCompletionFunc(flag, fixed(words...)); err != nil {
			panic("cli: " + err.Error())
		}
	}
}
