package message

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
)

// compare holds a language against another: the same rooms, keys and holes.
func (l *Language) compare(with *Language) []string {
	var faults []string
	for _, room := range with.roomNames() {
		faults = append(faults, compareRoom(l.Tag+"/"+room, l.room(room), with.room(room))...)
	}
	for _, room := range l.roomNames() {
		if !slices.Contains(with.roomNames(), room) {
			faults = append(faults, fmt.Sprintf("%s/%s.toml: no such room", l.Tag, room))
		}
	}
	return faults
}

func compareRoom(name string, ours, theirs map[string]text) []string {
	var faults []string
	for key, t := range theirs {
		switch own, ok := ours[key]; {
		case !ok:
			faults = append(faults, name+": "+key+" is missing")
		case !slices.Equal(own.names(), t.names()):
			faults = append(faults, fmt.Sprintf("%s: %s has the holes %v instead of %v", name, key, own.names(), t.names()))
		}
	}
	for key := range ours {
		if _, ok := theirs[key]; !ok {
			faults = append(faults, name+": nobody says "+key)
		}
	}
	slices.Sort(faults)
	return faults
}

// roomNames are the rooms that have a file.
func (l *Language) roomNames() []string {
	var names []string
	files, _ := fs.Glob(l.files, l.folder()+"/*.toml")
	for _, f := range files {
		names = append(names, strings.TrimSuffix(f[strings.LastIndexByte(f, '/')+1:], ".toml"))
	}
	return names
}
