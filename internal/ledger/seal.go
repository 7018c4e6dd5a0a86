package ledger

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"strconv"
	"time"

	"levigate"
)

const edition = "levigate/record/1\n"

// Time is how times are hashed and kept: text that sorts as the times do.
const Time = "2006-01-02T15:04:05.000000Z"

// Head is the end of the chain. The zero value is an empty one.
type Head struct {
	Seq  int64
	Hash string
}

// Seal gives a record its place behind the head, and its time the precision
// that is kept. It returns the new head.
func Seal(head Head, r *levigate.Record) Head {
	r.At = r.At.UTC().Truncate(time.Microsecond)
	r.Seq, r.Prev = head.Seq+1, head.Hash
	r.Hash = Hash(r)
	return Head{r.Seq, r.Hash}
}

// Bytes is the canonical form of a record, which is hashed.
func Bytes(r *levigate.Record) []byte {
	b := appendField(content(r), "seq", strconv.FormatInt(r.Seq, 10))
	return b
}

// Hash is the hash a record ought to carry.
func Hash(r *levigate.Record) string {
	sum := sha256.Sum256(Bytes(r))
	return hex.EncodeToString(sum[:])
}

// content is the canonical form without its end, the record's place.
func content(r *levigate.Record) []byte {
	b := append(make([]byte, 0, len(r.Body)+512), edition...)
	for _, f := range [...]struct{ name, text string }{
		{"id", r.ID}, {"kind", r.Kind}, {"subject.kind", r.Subject.Kind}, {"subject.key", r.Subject.Key},
		{"by", r.By}, {"why", r.Why}, {"at", r.At.UTC().Format(Time)}, {"corrects", r.Corrects},
		{"body", string(r.Body)}, {"prev", r.Prev},
	} {
		b = appendField(b, f.name, f.text)
	}
	return b
}

func appendField(b []byte, name, text string) []byte {
	b = fmt.Appendf(b, "%s %d\n", name, len(text))
	b = append(b, text...)
	return append(b, '\n')
}

// hashAt hashes a record as if it stood at another place, from the state after
// its content.
func hashAt(content hash.Cloner, seq int64) string {
	h, err := content.Clone()
	if err != nil {
		return ""
	}
	h.Write(appendField(nil, "seq", strconv.FormatInt(seq, 10)))
	return hex.EncodeToString(h.Sum(nil))
}
