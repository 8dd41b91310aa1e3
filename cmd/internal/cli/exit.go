package cli

import (
	"context"
	"errors"
	"fmt"
	"io"

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

const exitHelp = `What the exit code of underfoot says:

  0    done, whatever the verdict
  1    a fault of the program itself
  2    a wrong flag, an unknown address, a refused value
  3    stopped before the end; the answers so far are saved
  4    with --gate: the verdict is not ready or prepare
  5    a file, pack or line is invalid or newer than this program; a rule test fails
  6    changed or locked by another process
  7    input or output failed, or a file is not there
  130  interrupted; the answers so far are saved

Of several files the highest code counts.`

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
func report(w io.Writer, l *message.Language, err error) {
	var problem *assess.Problem
	var problems assess.Problems
	var before *told
	var alarm *interview.Alarm
	switch {
	case err == nil, errors.Is(err, errGate), errors.As(err, &before):
	case errors.As(err, &alarm):
		fmt.Fprintf(w, "\n%s\n\nYour answers are saved. Nothing else is asked until this is dealt with; then start walk again.\n", alarm.Text)
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(w, "underfoot: interrupted; the answers so far are saved")
	case errors.Is(err, line.ErrStopped):
		fmt.Fprintln(w, "underfoot: stopped before the end; the answers so far are saved")
	case errors.As(err, &problems):
		for _, p := range problems {
			fmt.Fprintln(w, "underfoot: "+p.Report(l))
		}
	case errors.As(err, &problem):
		fmt.Fprintln(w, "underfoot: "+problem.Report(l))
	default:
		fmt.Fprintln(w, "underfoot: "+err.Error())
	}
}

// usage is a wrong word on the command line with what to do about it.
func usage(what, hint string) error {
	return &assess.Problem{Kind: assess.Usage, What: message.Verbatim(what), Hint: message.Verbatim(hint)}
}
