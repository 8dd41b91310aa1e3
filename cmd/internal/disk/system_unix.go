//go:build unix

package disk

import (
	"errors"
	"io/fs"
	"sync"
	"syscall"
)

// umask is what the user takes away from the mode of new files. The system has
// no way to look at it but to set it, so it is looked at once.
var umask = sync.OnceValue(func() fs.FileMode {
	mask := syscall.Umask(0o077)
	syscall.Umask(mask)
	return fs.FileMode(mask)
})

// diskFull reports whether there was no room left, on the disk or of the user.
func diskFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT)
}
