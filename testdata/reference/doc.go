// Package reference checks the program against independent implementations of
// what it computes. It is a module of its own, so that these never become
// dependencies of the program; nothing imports it.
package reference
