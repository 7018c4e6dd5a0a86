package refdata

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"sync"
)

// Fingerprint names the embedded tables as a whole: a frozen version keeps it,
// so that a later reader knows which data its figures were made from.
var Fingerprint = sync.OnceValue(func() string {
	h := sha256.New()
	// WalkDir goes in lexical order, so the outcome depends on the data alone.
	err := fs.WalkDir(files, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := files.ReadFile(path)
		if err != nil {
			return err
		}
		h.Write([]byte(path + "\x00"))
		h.Write(text)
		return nil
	})
	if err != nil {
		panic("refdata: " + err.Error())
	}
	return hex.EncodeToString(h.Sum(nil)[:8])
})
