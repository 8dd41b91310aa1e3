package message

import (
	"io/fs"
	"reflect"

	"underfoot/assess/datafile"
)

// Read fills in texts that stand beside their records, such as those of rules,
// questions and steps: the file name.TAG.toml, strictly. In the pseudo-language
// every string gets its brackets, but for fields tagged message:"word", which
// are words of the program.
func (l *Language) Read(files fs.FS, name string, into any) error {
	path := name + "." + l.folder() + ".toml"
	data, err := fs.ReadFile(files, path)
	if err != nil {
		return err
	}
	if err := datafile.Decode(path, data, into); err != nil {
		return err
	}
	if l.Tag == Pseudo {
		bracket(reflect.ValueOf(into).Elem())
	}
	return nil
}

// bracket walks a decoded value.
func bracket(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if v.String() != "" {
			v.SetString("⟦" + v.String() + "⟧")
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && f.Tag.Get("message") != "word" {
				bracket(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			bracket(v.Index(i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			e := reflect.New(v.Type().Elem()).Elem()
			e.Set(v.MapIndex(k))
			bracket(e)
			v.SetMapIndex(k, e)
		}
	}
}
