// Package ledger chains records, so that one edited, removed, put in or moved
// later can be named.
//
// Each record's hash is the SHA-256 of its canonical bytes:
//
//	levigate/record/1 LF
//	name SP length LF bytes LF        for each field, in this order:
//	id kind subject.kind subject.key by why at corrects body prev seq
//
// length is the number of bytes that follow, in decimal, so that no two records
// have the same bytes. at is UTC to the microsecond (2006-01-02T15:04:05.000000Z),
// seq decimal, prev the hash of the record before in lower-case hex, empty for
// the first, body the exact bytes that were kept. Text and times are hashed as
// they are kept, so nothing is derived twice in two ways. A later form takes
// another first line; this one never changes.
//
// What the chain can't show: the head, which tells the last record, is kept in
// the same file. Someone who may write that file and knows this package can make
// the whole chain anew, or put an older copy of the file in place, and Verify
// finds nothing. Only a head that was noted elsewhere, in a notebook or on a
// signed paper, shows that: Checker.Holds compares it.
package ledger
