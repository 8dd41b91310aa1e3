package console

import (
	"strconv"
	"time"

	"underfoot/assess"
	"underfoot/assess/message"
)

// Today is the day that a command takes as today: that of its flag, else that
// of SOURCE_DATE_EPOCH, which is in UTC by its specification, else the local
// day of the clock. Errors are *assess.Problem of the kind Usage.
func (s *Streams) Today(flag string, now func() time.Time) (assess.Day, error) {
	if flag != "" {
		if _, err := time.Parse(time.DateOnly, flag); err != nil {
			return "", refused("--today", flag, message.New("console/day.flag"))
		}
		return assess.Day(flag), nil
	}
	if epoch := s.env("SOURCE_DATE_EPOCH"); epoch != "" {
		seconds, err := strconv.ParseInt(epoch, 10, 64)
		if err != nil || seconds < 0 || seconds > maxEpoch {
			return "", refused("SOURCE_DATE_EPOCH", epoch, message.New("console/day.epoch"))
		}
		return day(time.Unix(seconds, 0).UTC()), nil
	}
	return day(now()), nil
}

// maxEpoch is the end of the year 9999, the last that four digits can name.
const maxEpoch = 253402300799

func day(t time.Time) assess.Day { return assess.Day(t.Format(time.DateOnly)) }

func refused(place, value string, hint message.Message) error {
	return &assess.Problem{Kind: assess.Usage, Place: place, What: message.New("console/day.none", "given", strconv.Quote(value)), Hint: hint}
}
