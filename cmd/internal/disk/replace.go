package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"underfoot/assess"
	"underfoot/assess/message"
)

// newMode is the mode of a file that was not there before, less the umask.
const newMode = 0o644

// A creator makes the hidden file that is to take a target's place.
type creator func(target string) (*os.File, error)

// replace puts new content in place of a file in one step: it is written to a
// hidden file of the same folder, forced to the disk, and renamed.
func replace(target string, data []byte, create creator) error {
	mode, err := modeOf(target)
	if err != nil {
		return failed(target, "written", err)
	}
	temp, err := writeBeside(target, data, mode, create)
	if err != nil {
		return failed(target, "written", err)
	}
	if err := os.Rename(temp, target); err != nil {
		_ = os.Remove(temp)
		return failed(target, "replaced", err)
	}
	if err := syncFolder(filepath.Dir(target)); err != nil {
		return &assess.Problem{Kind: assess.IO, Place: target, What: message.New("disk/folder.what", "why", reason(err)),
			Hint: message.New("disk/folder.hint"), Cause: err}
	}
	return nil
}

// modeOf is the mode that a file has or is to have. A file that its owner may
// not write is not replaced either.
func modeOf(target string) (fs.FileMode, error) {
	info, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return newMode &^ umask(), nil
	case err != nil:
		return 0, err
	case !info.Mode().IsRegular():
		return 0, errNotAFile
	case info.Mode().Perm()&0o200 == 0:
		return 0, fs.ErrPermission
	}
	return info.Mode().Perm(), nil
}

var errNotAFile = message.New("disk/cause.no_file").Err()

// writeBeside writes a hidden file beside the target; on failure nothing of it
// is left.
func writeBeside(target string, data []byte, mode fs.FileMode, create creator) (path string, err error) {
	f, err := create(target)
	if err != nil {
		return "", err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(f.Name())
		}
	}()
	_, err = f.Write(data)
	if err == nil {
		err = errors.Join(f.Chmod(mode), f.Sync())
	}
	return f.Name(), errors.Join(err, f.Close())
}

// createLocked makes the hidden file of somebody who holds the lock. It always
// has the same name, so what a killed program left is cleared away.
func createLocked(target string) (*os.File, error) {
	name := hidden(target, "new")
	if err := os.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	return os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
}

// createApart makes a hidden file that no other program writes to.
func createApart(target string) (*os.File, error) {
	return os.CreateTemp(filepath.Dir(target), filepath.Base(hidden(target, "*.new")))
}

// hidden is the name of a hidden file beside the target.
func hidden(target, ending string) string {
	return filepath.Join(filepath.Dir(target), "."+filepath.Base(target)+"."+ending)
}

// syncFolder makes the rename last. Windows keeps no folder open for that.
func syncFolder(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// failed says what could not be done with a file, such as read, and what to do
// about it.
func failed(path, deed string, cause error) error {
	return &assess.Problem{Kind: assess.IO, Place: path, What: message.New("disk/failed."+deed, "why", reason(cause)), Hint: hint(cause), Cause: cause}
}

// reason is the cause without the paths that the system adds to it.
func reason(err error) message.Message {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return message.Of(path.Err)
	case errors.As(err, &link):
		return message.Of(link.Err)
	}
	return message.Of(err)
}

func hint(err error) message.Message {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return message.New("disk/hint.missing")
	case errors.Is(err, fs.ErrPermission):
		return message.New("disk/hint.denied")
	case diskFull(err):
		return message.New("disk/hint.full")
	}
	return message.New("disk/hint.unchanged")
}
