package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"underfoot/assess"
)

// newMode is the mode of a file that was not there before, less the umask.
const newMode = 0o644

// replace puts new content in place of a file in one step: it is written to a
// hidden file of the same folder, forced to the disk, and renamed.
func replace(target string, data []byte) error {
	temp, err := writeBeside(target, data)
	if err != nil {
		return failed(target, "cannot be written", err)
	}
	if err := os.Rename(temp, target); err != nil {
		_ = os.Remove(temp)
		return failed(target, "cannot be replaced", err)
	}
	if err := syncFolder(filepath.Dir(target)); err != nil {
		return failed(target, "was written, but may not outlast a power cut", err)
	}
	return nil
}

// writeBeside writes a hidden file with the target's mode; on failure nothing
// of it is left.
func writeBeside(target string, data []byte) (path string, err error) {
	f, err := createBeside(target)
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
		err = f.Sync()
	}
	return f.Name(), errors.Join(err, f.Close())
}

func createBeside(target string) (*os.File, error) {
	info, err := os.Stat(target)
	if err == nil && info.IsDir() {
		return nil, &fs.PathError{Op: "write", Path: target, Err: errors.New("it is a folder")}
	}
	f, tempErr := os.CreateTemp(filepath.Dir(target), "."+filepath.Base(target)+".*.tmp")
	if tempErr != nil {
		return nil, tempErr
	}
	mode := newMode &^ umask()
	if err == nil {
		mode = info.Mode().Perm()
	}
	if err := f.Chmod(mode); err != nil {
		return nil, errors.Join(err, f.Close(), os.Remove(f.Name()))
	}
	return f, nil
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

// failed says what could not be done with a file, and what to do about it.
func failed(path, what string, cause error) error {
	return &assess.Problem{Kind: assess.IO, Place: path, What: what + ": " + reason(cause), Hint: hint(cause), Cause: cause}
}

// reason is the cause without the paths that the system adds to it.
func reason(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}

func hint(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "check the name and the folder"
	case errors.Is(err, fs.ErrPermission):
		return "nothing was changed; check who may write there"
	case diskFull(err):
		return "disk full: nothing was changed; make room and try again"
	}
	return "nothing was changed"
}
