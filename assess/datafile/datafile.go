// Package datafile reads the records that the program ships, strictly: a key
// that no record has is a fault, since one that is misspelt would leave out what
// it was written for.
package datafile

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/pelletier/go-toml/v2"
)

// Decode reads the TOML of a file into a record. The error says where in the file
// the fault stands, with its line; it is for whoever writes the file.
func Decode(name string, data []byte, into any) error {
	err := toml.NewDecoder(bytes.NewReader(data)).DisallowUnknownFields().Decode(into)
	var unknown *toml.StrictMissingError
	var fault *toml.DecodeError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &unknown):
		return fmt.Errorf("%s: a key that no record has:\n%s", name, unknown.String())
	case errors.As(err, &fault):
		row, column := fault.Position()
		return fmt.Errorf("%s:%d:%d: %w\n%s", name, row, column, fault, fault.String())
	}
	return fmt.Errorf("%s: %w", name, err)
}

// MustDecode is Decode for a file that is part of the program: a fault is a
// programming error and panics.
func MustDecode(name string, data []byte, into any) {
	if err := Decode(name, data, into); err != nil {
		panic(err.Error())
	}
}
