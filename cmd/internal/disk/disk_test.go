package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"underfoot/assess"
	"underfoot/assess/message"
)

func content(t *testing.T, path string) string {
	t.Helper()
	data, err := Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func to(text string) func([]byte) ([]byte, error) {
	return func([]byte) ([]byte, error) { return []byte(text), nil }
}

func problem(t *testing.T, err error, kind assess.ProblemKind) *assess.Problem {
	t.Helper()
	var p *assess.Problem
	if !errors.As(err, &p) || p.Kind != kind {
		t.Fatalf("%v, want a problem of the kind %d", err, kind)
	}
	return p
}

func TestSaveAndLoad(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.yaml")
	if err := Save(path, func(current []byte) ([]byte, error) {
		if current != nil {
			t.Errorf("there was no file, but %q", current)
		}
		return []byte("one"), nil
	}); err != nil {
		t.Fatal(err)
	}
	if err := Save(path, func(current []byte) ([]byte, error) { return append(current, " two"...), nil }); err != nil {
		t.Fatal(err)
	}
	data, err := Load(path)
	if err != nil || string(data) != "one two" {
		t.Errorf("%q %v", data, err)
	}
	leftovers(t, path)
}

// leftovers: beside the file there is at most its lock.
func leftovers(t *testing.T, path string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".new") {
			t.Errorf("%s was left", e.Name())
		}
	}
}

func TestRefusedChangeLeavesTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.yaml")
	if err := WriteNew(path, []byte("old")); err != nil {
		t.Fatal(err)
	}
	mine := errors.New("no")
	if err := Save(path, func([]byte) ([]byte, error) { return []byte("new"), mine }); err != mine {
		t.Errorf("%v, want the error of change itself", err)
	}
	if got := content(t, path); got != "old" {
		t.Errorf("%q", got)
	}
}

func TestModeIsKept(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("files have no modes")
	}
	path := filepath.Join(t.TempDir(), "record.yaml")
	if err := os.WriteFile(path, []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	for _, save := range []func() error{func() error { return Save(path, to("a")) }, func() error { return WriteNew(path, []byte("b")) }} {
		if err := save(); err != nil {
			t.Fatal(err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
			t.Errorf("mode %v, %v", info.Mode(), err)
		}
	}
}

func TestLinksStay(t *testing.T) {
	folder := t.TempDir()
	for _, c := range []struct{ name, link, target string }{
		{"to a file", "a.yaml", "real-a.yaml"},
		{"to nothing yet", "b.yaml", "real-b.yaml"},
	} {
		link, target := filepath.Join(folder, c.link), filepath.Join(folder, c.target)
		if c.name == "to a file" {
			if err := os.WriteFile(target, []byte("old"), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.Symlink(c.target, link); err != nil {
			t.Skip(err)
		}
		if err := Save(link, to("new")); err != nil {
			t.Fatal(c.name, err)
		}
		if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
			t.Errorf("%s: the link is gone", c.name)
		}
		if got := content(t, target); got != "new" {
			t.Errorf("%s: target holds %q", c.name, got)
		}
	}
}

func TestProblems(t *testing.T) {
	folder := t.TempDir()
	readOnly := filepath.Join(folder, "read-only.yaml")
	if err := os.WriteFile(readOnly, []byte("old"), 0o400); err != nil {
		t.Fatal(err)
	}
	_, missing := Load(filepath.Join(folder, "none.yaml"))
	for _, c := range []struct {
		name string
		err  error
		hint string
	}{
		{"no file", missing, "check the name"},
		{"no folder", WriteNew(filepath.Join(folder, "none", "x.txt"), nil), "check the name"},
		{"no folder, saving", Save(filepath.Join(folder, "none", "x.txt"), to("")), "check the name"},
		{"a folder", WriteNew(folder, nil), "nothing was changed"},
		{"read only", Save(readOnly, to("new")), "who may write"},
	} {
		if p := problem(t, c.err, assess.IO); !strings.Contains(p.Hint.String(), c.hint) || p.Place == "" {
			t.Errorf("%s: %s", c.name, p.Report(message.English()))
		}
	}
	if got := content(t, readOnly); got != "old" {
		t.Errorf("a read-only file holds %q", got)
	}
}

func TestFullDisk(t *testing.T) {
	const full = "/dev/full" // a device of Linux on which no write finds room
	if _, err := os.Stat(full); err != nil {
		t.Skip(err)
	}
	if p := problem(t, WriteNew(full, []byte("x")), assess.IO); !strings.HasPrefix(p.Hint.String(), "disk full: nothing was changed") {
		t.Errorf("%s", p.Report(message.English()))
	}
}

func TestLockedByAnother(t *testing.T) {
	defer func(patience time.Duration) { lockPatience = patience }(lockPatience)
	lockPatience = 50 * time.Millisecond
	path := filepath.Join(t.TempDir(), "record.yaml")
	err := Save(path, func([]byte) ([]byte, error) {
		err := Save(path, to("inner"))
		p := problem(t, err, assess.Conflict)
		if !strings.Contains(p.Hint.String(), lockPath(path)) {
			t.Errorf("%s", p.Report(message.English()))
		}
		return []byte("outer"), nil
	})
	if err != nil || content(t, path) != "outer" {
		t.Error(err)
	}
}

// TestSavesQueue: of many saves at once none is lost. A busy machine may take
// long over them.
func TestSavesQueue(t *testing.T) {
	defer func(patience time.Duration) { lockPatience = patience }(lockPatience)
	lockPatience = time.Minute
	path := filepath.Join(t.TempDir(), "record.yaml")
	var all sync.WaitGroup
	const saves = 12
	for range saves {
		all.Go(func() {
			if err := Save(path, func(current []byte) ([]byte, error) { return append(current, 'x'), nil }); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	if got := content(t, path); len(got) != saves {
		t.Errorf("%d of %d saves are left", len(got), saves)
	}
}
