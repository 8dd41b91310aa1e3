// Package disk reads and replaces files so that nobody ever meets half of one:
// a power cut, a full disk or a second program leaves the old file or the new.
package disk

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"

	"underfoot/assess"
	"underfoot/assess/message"
)

// How long a save waits for another program's, and how often it looks. A test
// is less patient.
var (
	lockPatience = 5 * time.Second
	lockInterval = 5 * time.Millisecond
)

// Load reads a file whole. Errors are *assess.Problem of the kind IO.
func Load(path string) ([]byte, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, failed(path, "read", err)
	}
	return data, nil
}

// Save replaces a file by what change makes of its current content, which is
// nil where there is no file yet. From reading to replacing no other Save of
// the same file runs. Where change fails, its error comes back and the file
// stays; where it gives back the same bytes, nothing is written. The mode of
// the file is kept, and a symbolic link stays one: its target is replaced.
// Errors of its own are *assess.Problem of the kind IO or Conflict.
func Save(path string, change func(current []byte) ([]byte, error)) error {
	target, err := resolve(path)
	if err != nil {
		return failed(path, "saved", err)
	}
	unlock, err := lock(target)
	if err != nil {
		return err
	}
	defer unlock()
	current, err := os.ReadFile(target)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return failed(path, "read", err)
	}
	next, err := change(current)
	if err != nil {
		return err
	}
	if current != nil && string(next) == string(current) {
		return nil
	}
	return replace(target, next, createLocked)
}

// WriteNew writes a file whole, in place of one that may be there already. It
// takes no lock: a report is made anew, never changed. A device or a pipe is
// written to as it is.
func WriteNew(path string, data []byte) error {
	target, err := resolve(path)
	if err != nil {
		return failed(path, "written", err)
	}
	if info, err := os.Stat(target); err == nil && info.Mode()&(fs.ModeDevice|fs.ModeNamedPipe) != 0 {
		return through(target, data)
	}
	return replace(target, data, createApart)
}

func through(target string, data []byte) error {
	f, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err != nil {
		return failed(target, "opened", err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err != nil {
		return failed(target, "written", err)
	}
	return nil
}

// resolve is the file that a path names in the end. The last name of the path
// need not be there yet.
func resolve(path string) (string, error) {
	target, err := filepath.EvalSymlinks(path)
	if err == nil || !errors.Is(err, fs.ErrNotExist) {
		return target, err
	}
	if link, err := os.Readlink(path); err == nil {
		if !filepath.IsAbs(link) {
			link = filepath.Join(filepath.Dir(path), link)
		}
		return link, nil
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(path))
	return filepath.Join(folder, filepath.Base(path)), err
}

// lockPath is the lock file of a file: a hidden one beside it. It stays after
// use, since taking it away would let two programs lock two different files.
func lockPath(path string) string {
	return hidden(path, "lock")
}

func lock(target string) (unlock func(), err error) {
	l := flock.New(lockPath(target), flock.SetPermissions(0o600))
	ctx, cancel := context.WithTimeout(context.Background(), lockPatience)
	defer cancel()
	_, err = l.TryLockContext(ctx, lockInterval)
	switch {
	case err == nil:
		return func() { _ = l.Close() }, nil
	case errors.Is(err, context.DeadlineExceeded):
		return nil, &assess.Problem{Kind: assess.Conflict, Place: target, Cause: err,
			What: message.New("disk/busy.what"), Hint: message.New("disk/busy.hint", "lock", lockPath(target))}
	}
	return nil, failed(target, "locked", err)
}
