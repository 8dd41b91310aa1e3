package cli

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"underfoot/assess"
	"underfoot/assess/message"
)

// usage is a wrong word on the command line with what to do about it.
func usage(what, hint message.Message) *assess.Problem {
	return &assess.Problem{Kind: assess.Usage, What: what, Hint: hint}
}

func oneOf(words []string) message.Message {
	return message.New("cli/hint.one_of", "list", strings.Join(words, ", "))
}

// meant puts the word that was probably meant before a hint.
func meant(word string, words []string, hint message.Message) message.Message {
	if near := assess.Nearest(word, words); near != "" {
		return message.New("cli/hint.meant_of", "word", near, "rest", hint)
	}
	return hint
}

// exactly, atLeast and atMost are how many arguments a command takes.
func exactly(n int, hint message.Message) cobra.PositionalArgs {
	return func(_ *cobra.Command, given []string) error {
		if len(given) != n {
			return usage(message.New("cli/wrong.exactly", "n", n, "given", len(given)), hint)
		}
		return nil
	}
}

func atLeast(n int, hint message.Message) cobra.PositionalArgs {
	return func(_ *cobra.Command, given []string) error {
		if len(given) < n {
			return usage(message.New("cli/wrong.at_least", "n", n, "given", len(given)), hint)
		}
		return nil
	}
}

func atMost(n int, hint message.Message) cobra.PositionalArgs {
	return func(_ *cobra.Command, given []string) error {
		if len(given) > n {
			return usage(message.New("cli/wrong.at_most", "n", n, "given", len(given)), hint)
		}
		return nil
	}
}

// none is for commands that take flags alone.
func none(hint message.Message) cobra.PositionalArgs {
	return func(c *cobra.Command, given []string) error {
		if len(given) > 0 {
			return usage(unknownCommand(given[0], c), hint)
		}
		return nil
	}
}

func unknownCommand(word string, c *cobra.Command) message.Message {
	return message.New("cli/wrong.command", "word", strconv.Quote(word), "command", strconv.Quote(c.CommandPath()))
}

// asUsage says in our words what the library says of a command that it does
// not know: it has no type for that error.
func asUsage(root *cobra.Command, err error) error {
	var ours *assess.Problem
	if err == nil || errors.As(err, &ours) {
		return err
	}
	rest, unknown := strings.CutPrefix(err.Error(), "unknown command ")
	quoted, bad := strconv.QuotedPrefix(rest)
	if !unknown || bad != nil {
		return err
	}
	word, _ := strconv.Unquote(quoted)
	hint := message.New("cli/hint.commands")
	if near := root.SuggestionsFor(word); len(near) > 0 {
		hint = message.New("cli/hint.meant_of", "word", near[0], "rest", hint)
	}
	return usage(unknownCommand(word, root), hint)
}

// flagProblem says in our words what the library says of a flag.
func flagProblem(c *cobra.Command, err error) error {
	hint := message.New("cli/hint.help", "command", c.CommandPath())
	var unknown *pflag.NotExistError
	var empty *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	what := message.Verbatim(err.Error())
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		what = message.New("cli/wrong.short_flag", "letter", letter(unknown.GetSpecifiedName()), "word", unknown.GetSpecifiedShortnames())
	case errors.As(err, &unknown):
		what = message.New("cli/wrong.flag", "flag", unknown.GetSpecifiedName())
	case errors.As(err, &empty) && empty.GetSpecifiedShortnames() != "":
		what = message.New("cli/wrong.no_letter_value", "letter", letter(empty.GetSpecifiedName()), "word", empty.GetSpecifiedShortnames())
	case errors.As(err, &empty):
		what = message.New("cli/wrong.no_value", "flag", empty.GetSpecifiedName())
	case errors.As(err, &value):
		what = message.New("cli/wrong.value", "value", strconv.Quote(value.GetValue()), "flag", strconv.Quote(flagName(value.GetFlag())), "cause", value.Unwrap())
	}
	return usage(what, hint)
}

func letter(name string) string { return strconv.QuoteRune([]rune(name)[0]) }

func flagName(f *pflag.Flag) string {
	if f.Shorthand != "" {
		return fmt.Sprintf("-%s, --%s", f.Shorthand, f.Name)
	}
	return "--" + f.Name
}
