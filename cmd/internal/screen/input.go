package screen

import (
	"io"
	"os"
)

// ended says that the input has ended: nobody is there any more.
type ended struct{}

// watch is the reader, telling when it ends; the library waits for ever then.
// A file stays one, so that it is still known for a terminal.
func watch(in io.Reader, end func()) io.Reader {
	w := watched{in, end}
	if f, ok := in.(*os.File); ok {
		return watchedFile{f, w}
	}
	return w
}

type watched struct {
	in  io.Reader
	end func()
}

// Read reads; at the end it says so.
func (w watched) Read(p []byte) (int, error) {
	n, err := w.in.Read(p)
	if err == io.EOF {
		w.end()
	}
	return n, err
}

type watchedFile struct {
	*os.File
	watched
}

// Read reads from the file by way of what watches it.
func (w watchedFile) Read(p []byte) (int, error) { return w.watched.Read(p) }
