//go:build !unix

package disk

import (
	"errors"
	"io/fs"
	"syscall"
)

// umask takes nothing away where files have no modes.
func umask() fs.FileMode { return 0 }

// diskFull reports whether there was no room left: ERROR_HANDLE_DISK_FULL and
// ERROR_DISK_FULL of the Windows system error codes.
func diskFull(err error) bool {
	return errors.Is(err, syscall.Errno(39)) || errors.Is(err, syscall.Errno(112))
}
