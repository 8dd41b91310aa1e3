package console

import (
	"errors"
	"io"
	"syscall"

	"underfoot/assess"
	"underfoot/assess/message"
)

// Checked is a writer that remembers the first error, so that a command can
// print without asking after each line and still say that its result did not
// arrive.
type Checked struct {
	w   io.Writer
	err error
}

// Write writes until the first error; after it nothing more is written.
func (c *Checked) Write(p []byte) (int, error) {
	if c.err != nil {
		return 0, c.err
	}
	n, err := c.w.Write(p)
	if err == nil && n < len(p) {
		err = io.ErrShortWrite
	}
	c.err = err
	return n, err
}

// Unwrap is the writer below, for what must know whether it is a file.
func (c *Checked) Unwrap() io.Writer { return c.w }

// Problem is the first error of a write as a *assess.Problem of the kind IO,
// or nil. A reader that has closed its end, such as a pager that was left, is
// no problem: there is nobody to tell.
func (c *Checked) Problem() error {
	if c.err == nil || errors.Is(c.err, syscall.EPIPE) || errors.Is(c.err, io.ErrClosedPipe) {
		return nil
	}
	return &assess.Problem{Kind: assess.IO, What: message.New("console/output.failed", "cause", c.err),
		Hint: message.New("console/output.hint"), Cause: c.err}
}
