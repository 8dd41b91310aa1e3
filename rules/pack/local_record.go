package pack

// The records of a local pack as they stand in its file.
type (
	localFile struct {
		Pack     packRecord      `toml:"pack"`
		Sources  []sourceRecord  `toml:"source"`
		Cautions []localCaution  `toml:"caution"`
		Tighten  []tightenRecord `toml:"tighten"`
		Raise    []raiseRecord   `toml:"raise"`
		Relax    []relaxRecord   `toml:"relax"`
		Rules    []localRule     `toml:"rule"`
	}
	packRecord struct {
		ID      string   `toml:"id"`
		Title   string   `toml:"title"`
		Edition string   `toml:"edition"`
		Regions []string `toml:"regions"`
	}
	// A sourceRecord is a paper that the pack leans on.
	sourceRecord struct {
		ID      string `toml:"id"`
		Title   string `toml:"title"`
		Edition string `toml:"edition"`
		Known   string `toml:"known"`
		States  string `toml:"states"`
	}
	localCaution struct {
		ID      string   `toml:"id"`
		Text    string   `toml:"text"`
		Sources []string `toml:"sources"`
	}
	// A tightenRecord gives a figure a stricter value.
	tightenRecord struct {
		Figure string `toml:"figure"`
		Value  string `toml:"value"`
		Source string `toml:"source"`
	}
	// A raiseRecord makes one of the program's rules ask for more.
	raiseRecord struct {
		Rule     string   `toml:"rule"`
		Unknown  string   `toml:"unknown"`
		Bars     []string `toml:"bars"`
		Cautions []string `toml:"cautions"`
		Source   string   `toml:"source"`
	}
	// A relaxRecord gives a figure a less strict value, or lets an open rule
	// ask for less.
	relaxRecord struct {
		Figure  string `toml:"figure"`
		Value   string `toml:"value"`
		Rule    string `toml:"rule"`
		Unknown string `toml:"unknown"`
		Source  string `toml:"source"`
	}
	// A localRule is a rule with its texts, and after which of the program's
	// rules it stands where it calls or permits.
	localRule struct {
		ruleRecord
		Text
		After string `toml:"after"`
	}
)
