package client

import (
	"bufio"
	"context"
	"encoding/json"
	"io"
	"strings"

	"levigate/wire"
)

// Events calls with every change until the context ends or the program does;
// which of the two the error says.
func (c *Client) Events(ctx context.Context, each func(wire.Event)) error {
	res, err := c.send(ctx, "GET", "/api/events", nil, nil)
	if err != nil {
		return err
	}
	defer res.Body.Close()
	lines := bufio.NewScanner(res.Body)
	for lines.Scan() {
		data, ok := strings.CutPrefix(lines.Text(), "data: ")
		if !ok {
			continue
		}
		var e wire.Event
		if err := json.Unmarshal([]byte(data), &e); err != nil {
			return err
		}
		each(e)
	}
	if err := lines.Err(); err != nil {
		return err
	}
	return io.EOF // the program has ended, or let go of a listener too far behind
}
