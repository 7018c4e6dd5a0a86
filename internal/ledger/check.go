package ledger

import (
	"crypto/sha256"
	"hash"
	"slices"

	"levigate"
)

// Checker walks a chain once, in the order of its places, and keeps of each
// record only what is needed to say what was done to it.
type Checker struct {
	links []link
	shift int64 // by how much the last moved record was moved
}

// link is a record without what it says.
type link struct {
	id         string
	seq        int64 // where it stands
	written    int64 // where it stood when it was hashed; 0 when it was edited
	prev, hash string
}

// place is where a record stood, as far as can be told.
func (l *link) place() int64 {
	if l.written > 0 {
		return l.written
	}
	return l.seq
}

// searched is how far from where a record stands its old place is looked for.
const searched = 256

// Add takes the next record.
func (c *Checker) Add(r *levigate.Record) {
	l := link{id: r.ID, seq: r.Seq, prev: r.Prev, hash: r.Hash}
	if r.Seq > 0 && Hash(r) == r.Hash {
		l.written = r.Seq
	} else {
		l.written = c.oldPlace(r)
	}
	c.links = append(c.links, l)
}

// oldPlace finds the place at which the record's hash is right: it was moved
// there from, and nothing else about it was changed.
func (c *Checker) oldPlace(r *levigate.Record) int64 {
	h, ok := sha256.New().(hash.Cloner)
	if !ok {
		return 0
	}
	h.Write(content(r))
	for d := range int64(2*searched + 2) {
		seq := r.Seq + c.shift // most often its neighbour was moved as far
		switch {
		case d%2 == 1:
			seq = r.Seq + (d+1)/2
		case d > 0:
			seq = r.Seq - d/2
		}
		if seq > 0 && hashAt(h, seq) == r.Hash {
			c.shift = seq - r.Seq
			return seq
		}
	}
	return 0
}

// Holds reports whether a hash noted earlier is still that of a record.
func (c *Checker) Holds(hash string) bool {
	return slices.ContainsFunc(c.links, func(l link) bool { return l.hash == hash })
}

// Len is how many records there are.
func (c *Checker) Len() int { return len(c.links) }

// Head is the end of the chain as its last record has it.
func (c *Checker) Head() Head {
	if len(c.links) == 0 {
		return Head{}
	}
	last := c.links[len(c.links)-1]
	return Head{last.seq, last.hash}
}
