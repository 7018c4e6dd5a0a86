// Package memory is a store that forgets when it ends: for tests, and for a
// bench that nobody means to keep.
package memory
