package takeoff

import (
	_ "embed"
	"sync"

	"underfoot/assess/datafile"
	"underfoot/assess/message"
)

//go:embed lines.toml
var linesTOML []byte

// A line is how one amount is counted.
type line struct {
	Unit  string `toml:"unit"`
	Whole bool   `toml:"whole"` // sold or counted in whole ones
	Note  bool   `toml:"note"`  // there is a sentence on the amount itself
}

// lines are by id; a fault in the file is a programming error, which a test
// finds before a reader does.
var lines = sync.OnceValue(func() map[string]line {
	all := map[string]line{}
	datafile.MustDecode("lines.toml", linesTOML, &all)
	return all
})

// text is what the amount of an id is called.
func text(id string) message.Message { return message.New("takeoff/text." + id) }

// unit is in what it is counted; per is area or run where the amount is not for
// the whole floor.
func (l line) unit(per string) message.Message {
	unit := message.New("takeoff/unit." + l.Unit)
	if per == "" {
		return unit
	}
	return message.New("takeoff/per."+per, "unit", unit)
}
