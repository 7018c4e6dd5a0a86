package program

import "io"

// ReadUpTo reads at most n bytes and never gives nil, so that an empty input
// is an empty file and not a missing one.
func ReadUpTo(r io.Reader, n int64) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, n))
	if err != nil {
		return nil, err
	}
	return append([]byte{}, data...), nil
}
