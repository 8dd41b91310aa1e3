package disk

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

const (
	crashFile = "DISK_CRASH_FILE"
	kills     = 50
)

// TestMain turns the test binary into the program that gets killed: it saves
// the file over and over, each time with one more line than it found, and says
// how many lines it has saved.
func TestMain(m *testing.M) {
	path := os.Getenv(crashFile)
	if path == "" {
		os.Exit(m.Run())
	}
	for {
		lines := 0
		if err := Save(path, func(current []byte) ([]byte, error) {
			next := oneMore(current)
			lines = bytes.Count(next, []byte("\n"))
			return next, nil
		}); err != nil {
			panic(err)
		}
		fmt.Println(lines)
	}
}

// oneMore is a content with one more line. The lines are long, so that half a
// write can be told from a whole one.
func oneMore(current []byte) []byte {
	n := bytes.Count(current, []byte("\n"))
	return fmt.Appendf(bytes.Clone(current), "%06d %s end\n", n, bytes.Repeat([]byte("x"), 4000))
}

// TestKilled: after a kill -9 at any moment the file is whole, and holds at
// least every save that was reported.
func TestKilled(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.yaml")
	if err := WriteNew(path, oneMore(nil)); err != nil {
		t.Fatal(err)
	}
	for range kills {
		reported := killedRun(t, path)
		data, err := Load(path)
		if err != nil {
			t.Fatal(err)
		}
		whole := []byte{}
		for range bytes.Count(data, []byte("\n")) {
			whole = oneMore(whole)
		}
		if lines := bytes.Count(data, []byte("\n")); !bytes.Equal(data, whole) || lines < reported {
			t.Fatalf("after the kill the file holds %d lines in %d bytes; %d lines were reported as saved", lines, len(data), reported)
		}
		if len(data) > 1<<20 {
			data = oneMore(nil)
			if err := WriteNew(path, data); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := Save(path, func(current []byte) ([]byte, error) { return oneMore(current), nil }); err != nil {
		t.Fatal(err)
	}
	leftovers(t, path)
}

// killedRun lets the saving program run for a moment and kills it; it gives
// back the last number of lines that the program reported.
func killedRun(t *testing.T, path string) (reported int) {
	t.Helper()
	var out bytes.Buffer
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), crashFile+"="+path)
	cmd.Stdout = &out
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	time.Sleep(time.Duration(rand.IntN(30000)) * time.Microsecond)
	if err := cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = cmd.Wait()
	lines := bytes.Split(out.Bytes(), []byte("\n"))
	if len(lines) > 1 {
		reported, _ = strconv.Atoi(string(lines[len(lines)-2]))
	}
	return reported
}
