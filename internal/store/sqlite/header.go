package sqlite

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
)

// application marks a file as ours: "Levg".
const application = 0x4c657667

var applicationText = fmt.Sprint(application)

var errEmpty = errors.New("empty")

// header looks at the first bytes of a file before any of it is believed: that
// it is a database, ours, and as long as it says. A file without any bytes is
// errEmpty.
//
// One with edits still beside it may well be shorter: a program that was killed
// while it took them in leaves its first page ahead of the rest, and the next to
// open it puts that right.
func header(path string) error {
	beside, _ := os.Stat(path + "-wal")
	f, err := os.Open(path)
	if err != nil {
		return bad(path, "can't be read: "+reason(err), "look at who may read it", err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return bad(path, "is no ordinary file", "name the file of a workspace or of a backup", err)
	}
	if info.Size() == 0 {
		return errEmpty
	}
	var h [100]byte
	n, err := io.ReadFull(f, h[:])
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return bad(path, "can't be read: "+reason(err), "look at the disk's health", err)
	}
	const magic = "SQLite format 3\x00"
	switch {
	case n < len(h) && string(h[:min(n, len(magic))]) == magic[:min(n, len(magic))]:
		return bad(path, "is cut short: only its first bytes are there", "take another copy of it", nil)
	case string(h[:len(magic)]) != magic:
		return bad(path, "is no Levigate workspace or backup", "name a file that levigate backup made", nil)
	case binary.BigEndian.Uint32(h[68:]) != application:
		return bad(path, "is a database of another program", "name a file that levigate backup made", nil)
	}
	if beside != nil && beside.Size() > 0 {
		return nil
	}
	page := int64(binary.BigEndian.Uint16(h[16:]))
	if page == 1 {
		page = 65536
	}
	pages := int64(binary.BigEndian.Uint32(h[28:]))
	if page < 512 || info.Size()%page != 0 || info.Size() < pages*page {
		return bad(path, fmt.Sprintf("is cut short: it has %d bytes and ought to have %d", info.Size(), pages*page), "take another copy of it", nil)
	}
	return nil
}
