// Package sqlite keeps a workspace in one SQLite file. Its SQL is the portable
// kind, so that a store for a shared database can use the same text; what is
// SQLite's own is in the files open, copy, examine and replace.
//
// Writes go through one connection, reads through a few: the file takes one
// writer at a time, and those who wait in Go wait in order and can be called
// off. Every write is on the disk before it is acknowledged (synchronous FULL).
package sqlite
