package pack

import (
	"embed"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/datafile"
	"underfoot/assess/message"
)

//go:embed shipped/*.toml
var shipped embed.FS

// The records as they stand in the files.
type (
	ruleRecord struct {
		ID           string             `toml:"id"`
		Since        string             `toml:"since"`
		Scope        string             `toml:"scope"`
		Rank         float64            `toml:"rank"`
		Regions      []string           `toml:"regions"`
		Applies      string             `toml:"applies"`
		When         string             `toml:"when"`
		Unknown      string             `toml:"unknown"`
		UnknownWhen  []policyCaseRecord `toml:"unknown_when"`
		Protects     string             `toml:"protects"`
		Bars         []string           `toml:"bars"`
		Permits      []string           `toml:"permits"`
		Calls        string             `toml:"calls"`
		Ready        bool               `toml:"ready"`
		Ends         bool               `toml:"ends"`
		Alternatives []string           `toml:"alternatives"`
		TakesUp      string             `toml:"takes_up"`
		Makes        map[string]string  `toml:"makes"`
		Reveals      []string           `toml:"reveals"`
		Cautions     []string           `toml:"cautions"`
		AtSteps      []string           `toml:"at_steps"`
		Sources      []string           `toml:"sources"`
		Value        string             `toml:"value"`
		Limit        string             `toml:"limit"`
		Risk         Risk               `toml:"risk"`
		Cases        []Case             `toml:"case"`
		file         string
	}
	policyCaseRecord struct {
		When string `toml:"when"`
		Then string `toml:"then"`
	}
	cautionRecord struct {
		ID      string   `toml:"id"`
		Sources []string `toml:"sources"`
	}
	cautionText struct {
		Text string `toml:"text"`
	}
	stepRecord struct {
		Path     string            `toml:"path"`
		Ends     bool              `toml:"ends"`
		Makes    map[string]string `toml:"makes"`
		Reveals  []string          `toml:"reveals"`
		Cautions []string          `toml:"cautions"`
	}
	fileRecord struct {
		Rule    []ruleRecord    `toml:"rule"`
		Caution []cautionRecord `toml:"caution"`
		Step    []stepRecord    `toml:"step"`
	}
)

// records is all that the files of a pack say, before anything is compiled.
type records struct {
	words    condition.Definitions
	rules    []ruleRecord
	cases    map[string][]Case // of the rules' own files of cases, by rule
	cautions []cautionRecord
	steps    []stepRecord
	texts    map[string]Text
	warnings map[string]cautionText
	stepText map[string]StepText
}

// readFiles reads every record and text of a folder.
func readFiles(files fs.FS, dir string, l *message.Language) (records, error) {
	rs := records{cases: map[string][]Case{}, texts: map[string]Text{}, warnings: map[string]cautionText{}, stepText: map[string]StepText{}}
	names, err := fs.Glob(files, dir+"/*.toml")
	if err != nil {
		return rs, err
	}
	slices.Sort(names)
	for _, name := range names {
		if topic := strings.TrimSuffix(name, ".toml"); path.Ext(topic) != "" && !strings.HasSuffix(topic, ".cases") {
			continue // the text of some language
		}
		if err := rs.readFile(files, name); err != nil {
			return rs, err
		}
		if err := rs.readTexts(files, name, l); err != nil {
			return rs, err
		}
	}
	rs.joinCases()
	return rs, nil
}

func (rs *records) readFile(files fs.FS, name string) error {
	switch {
	case strings.HasSuffix(name, "/"+vocabularyFile):
		return decode(files, name, &rs.words)
	case strings.HasSuffix(name, ".cases.toml"):
		return rs.readCases(files, name)
	}
	var f fileRecord
	if err := decode(files, name, &f); err != nil {
		return err
	}
	for i := range f.Rule {
		f.Rule[i].file = name
	}
	rs.rules = append(rs.rules, f.Rule...)
	rs.cautions = append(rs.cautions, f.Caution...)
	rs.steps = append(rs.steps, f.Step...)
	return nil
}

// readTexts reads what the language says of the records of a file, from the file
// beside it, where they are told.
func (rs *records) readTexts(files fs.FS, name string, l *message.Language) error {
	topic := strings.TrimSuffix(name, ".toml")
	switch {
	case name == path.Dir(name)+"/"+vocabularyFile, strings.HasSuffix(topic, ".cases"):
		return nil
	case path.Base(topic) == "caution":
		return l.Read(files, topic, &rs.warnings)
	case path.Base(topic) == "step":
		return l.Read(files, topic, &rs.stepText)
	}
	of := map[string]Text{} // of this topic alone: each text is read once
	err := l.Read(files, topic, &of)
	maps.Copy(rs.texts, of)
	return err
}

// vocabularyFile holds the names that the rules of a folder share.
const vocabularyFile = "vocabulary.toml"

// readCases reads the cases of the rules of one topic, which stand in a file
// beside theirs.
func (rs *records) readCases(files fs.FS, name string) error {
	var of map[string][]Case
	if err := decode(files, name, &of); err != nil {
		return err
	}
	for id, cases := range of {
		rs.cases[id] = append(rs.cases[id], cases...)
	}
	return nil
}

// joinCases puts the cases to their rules.
func (rs *records) joinCases() {
	for i := range rs.rules {
		r := &rs.rules[i]
		r.Cases = append(r.Cases, rs.cases[r.ID]...)
	}
}

func decode(files fs.FS, name string, into any) error {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return err
	}
	return datafile.Decode(name, data, into)
}
