// Package logic is truth that knows what it waits for: yes, no, or open on the
// addresses whose answers may settle it.
package logic
