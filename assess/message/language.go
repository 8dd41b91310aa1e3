package message

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"
	"sync"
)

// source is the tag of the language in which every sentence is written first; the others
// are held against it.
const source = "en"

// Pseudo is the tag of a language that is English in brackets: a sentence
// without them has not come through here.
const Pseudo = "en-XA"

//go:embed */*.toml
var shipped embed.FS

// A Language says messages. It may be used by several goroutines at once.
type Language struct {
	Tag   string
	files fs.FS
	rooms sync.Map // name of a room: func() map[string]text, read when first needed
}

// English is the program's first language.
var English = sync.OnceValue(func() *Language { return &Language{Tag: source, files: shipped} })

// Open is the language of a tag; ok is false where there is no such one. A
// language other than English is read whole and held against English; what it
// lacks, has too much or fills otherwise is a programming error and panics.
func Open(tag string) (l *Language, ok bool) {
	switch {
	case tag == source:
		return English(), true
	case tag == Pseudo:
		return &Language{Tag: Pseudo, files: shipped}, true
	case !isFolder(shipped, tag):
		return nil, false
	}
	l = &Language{Tag: tag, files: shipped}
	if faults := l.compare(English()); len(faults) > 0 {
		panic("message: " + strings.Join(faults, "\n"))
	}
	return l, true
}

// Tags are the languages that people are offered.
func Tags() []string {
	var tags []string
	folders, _ := fs.ReadDir(shipped, ".")
	for _, f := range folders {
		tags = append(tags, f.Name())
	}
	return tags
}

func isFolder(files fs.FS, name string) bool {
	info, err := fs.Stat(files, name)
	return err == nil && info.IsDir() && fs.ValidPath(name)
}

// Say is the text of a message, empty for one that says nothing. A key that
// there is not, a hole without a value and a value without a hole are
// programming errors and panic.
func (l *Language) Say(m Message) string {
	if m.Key == "" {
		return m.words
	}
	t, ok := l.find(m.Key)
	if !ok {
		panic("message: there is no sentence " + m.Key)
	}
	filled, fault := t.fill(m.Holes, l.value)
	if fault != "" {
		panic("message: " + m.Key + ": " + fault)
	}
	return filled
}

// Text is the sentence of a key, with pairs of a hole's name and its value.
func (l *Language) Text(key string, pairs ...any) string { return l.Say(New(key, pairs...)) }

// Has reports whether there is a sentence of this key.
func (l *Language) Has(key string) bool {
	_, ok := l.find(key)
	return ok
}

// Or is the sentence of a key, or the words given where it has none.
func (l *Language) Or(key, words string) string {
	if l.Has(key) {
		return l.Text(key)
	}
	return words
}

func (l *Language) find(key string) (text, bool) {
	room, name, _ := strings.Cut(key, "/")
	t, ok := l.room(room)[name]
	return t, ok
}

// room is the file of a room, read when somebody first says something there.
func (l *Language) room(name string) map[string]text {
	read, _ := l.rooms.LoadOrStore(name, sync.OnceValue(func() map[string]text { return l.mustRead(name) }))
	return read.(func() map[string]text)()
}

func (l *Language) mustRead(room string) map[string]text {
	data, err := fs.ReadFile(l.files, l.folder()+"/"+room+".toml")
	if err != nil {
		return nil
	}
	texts, err := readRoom(data)
	if err != nil {
		panic(fmt.Sprintf("message: %s/%s.toml: %v", l.folder(), room, err))
	}
	if l.Tag == Pseudo {
		for key, t := range texts {
			texts[key] = t.bracketed()
		}
	}
	return texts
}

// folder is where the language's files stand.
func (l *Language) folder() string {
	if l.Tag == Pseudo {
		return source
	}
	return l.Tag
}
