package message_test

import (
	"errors"
	"fmt"
	"testing"

	"underfoot/assess/message"
)

// A message that is an error stays a message, however it is wrapped; any other
// error is somebody else's words.
func TestErrorsAreMessages(t *testing.T) {
	err := message.New("problem/report.near", "word", "slab").Err()
	if got := message.Of(fmt.Errorf("reading: %w", err)); got.Key != "problem/report.near" {
		t.Errorf("%+v", got)
	}
	if got := err.Error(); got != "did you mean slab?" {
		t.Errorf("in English it says %q", got)
	}
	if got := message.Of(errors.New("no space left")); got.Key != "" || got.String() != "no space left" {
		t.Errorf("%+v", got)
	}
}
