package cli

import (
	"context"
	"errors"
	"fmt"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/cmd/internal/line"
	"underfoot/rules/interview"
)

// The exit codes: a contract, told by `help exit-codes`.
const (
	exitDone        = 0
	exitInternal    = 1
	exitUsage       = 2
	exitStopped     = 3
	exitGate        = 4
	exitInvalid     = 5
	exitConflict    = 6
	exitIO          = 7
	exitInterrupted = 130
)

var codes = map[assess.ProblemKind]int{
	assess.Internal: exitInternal, assess.Usage: exitUsage, assess.Stopped: exitStopped, assess.Invalid: exitInvalid,
	assess.Conflict: exitConflict, assess.IO: exitIO, assess.Interrupted: exitInterrupted,
}

// errGate says that --gate holds the verdict back.
var errGate = errors.New("the verdict is not ready or prepare")

// codeOf is the one place where errors become exit codes.
func codeOf(err error) int {
	var problem *assess.Problem
	var problems assess.Problems
	var alarm *interview.Alarm
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &alarm):
		return exitStopped
	case errors.Is(err, errGate):
		return exitGate
	case errors.Is(err, line.ErrStopped):
		return exitStopped
	case errors.Is(err, context.Canceled):
		return exitInterrupted
	case errors.As(err, &problems):
		code := exitDone
		for _, p := range problems {
			code = max(code, codes[p.Kind])
		}
		return code
	case errors.As(err, &problem):
		return codes[problem.Kind]
	}
	return exitInternal
}

// report prints an error and the next step, all problems of an input at once.
func (a *app) report(err error) {
	var problem *assess.Problem
	var problems assess.Problems
	var before *reported
	var alarm *interview.Alarm
	switch {
	case err == nil, errors.Is(err, errGate), errors.As(err, &before):
	case errors.As(err, &alarm):
		fmt.Fprintf(a.Err, "\n%s\n\n%s\n", alarm.Text, a.say("cli/problem.alarm"))
	case errors.Is(err, context.Canceled):
		a.complain(a.say("cli/problem.interrupted"))
	case errors.Is(err, line.ErrStopped):
		a.complain(a.say("cli/problem.stopped"))
	case errors.As(err, &problems):
		for _, p := range problems {
			a.complain(p.Report(a.language))
		}
	case errors.As(err, &problem):
		a.complain(problem.Report(a.language))
	default:
		a.complain(a.language.Say(message.Of(err)))
	}
}

// complain prints on the standard error, by the name of the program.
func (a *app) complain(text string) { fmt.Fprintln(a.Err, "underfoot: "+text) }
