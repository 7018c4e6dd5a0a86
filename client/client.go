package client

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strconv"

	"levigate"
	"levigate/wire"
)

// mostAnswer is the largest answer that is read, in bytes.
const mostAnswer = 64 << 20

// Client talks to one running program. It is safe for use by many at once.
type Client struct {
	// HTTP sends the requests; the one of net/http unless set.
	HTTP  *http.Client
	base  string
	token string
}

// At is a client for the address that serve printed, token and all.
func At(address string) (*Client, error) {
	u, err := url.Parse(address)
	if err != nil || u.Host == "" || u.Query().Get("token") == "" {
		return nil, &levigate.Error{Code: levigate.Invalid, Message: "this is not the address of a running Levigate",
			Help: "give the whole address that levigate serve printed, with its token", Cause: err}
	}
	return &Client{HTTP: http.DefaultClient, base: u.Scheme + "://" + u.Host, token: u.Query().Get("token")}, nil
}

// send makes a request of a path and its questions.
func (c *Client) send(ctx context.Context, method, path string, ask url.Values, body any) (*http.Response, error) {
	var in io.Reader
	if body != nil {
		b, err := json.Marshal(body)
		if err != nil {
			return nil, err
		}
		in = bytes.NewReader(b)
	}
	if len(ask) > 0 {
		path += "?" + ask.Encode()
	}
	req, err := http.NewRequestWithContext(ctx, method, c.base+path, in)
	if err != nil {
		return nil, err
	}
	req.Header.Set("Authorization", "Bearer "+c.token)
	if body != nil {
		req.Header.Set("Content-Type", "application/json")
	}
	res, err := c.HTTP.Do(req)
	if err != nil {
		return nil, err
	}
	if res.StatusCode >= 300 {
		defer res.Body.Close()
		return nil, refusal(res, path)
	}
	return res, nil
}

// call makes a request and reads its answer.
func call[T any](ctx context.Context, c *Client, method, path string, ask url.Values, body any) (*T, error) {
	res, err := c.send(ctx, method, path, ask, body)
	if err != nil {
		return nil, err
	}
	defer res.Body.Close()
	out := new(T)
	if err := json.NewDecoder(io.LimitReader(res.Body, mostAnswer)).Decode(out); err != nil {
		return nil, fmt.Errorf("the answer to %s %s cannot be read: %w", method, path, err)
	}
	return out, nil
}

// refusal is an answer that is none as the error it stands for.
func refusal(res *http.Response, path string) error {
	var r wire.Refusal
	if err := json.NewDecoder(io.LimitReader(res.Body, mostAnswer)).Decode(&r); err != nil || r.Message == "" {
		return fmt.Errorf("%s was answered with %s", path, res.Status)
	}
	if len(r.Clashes) > 0 {
		return &levigate.ClashError{Revision: r.Revision, Clashes: r.Clashes}
	}
	return &levigate.Error{Code: levigate.Code(r.Code), Message: r.Message, Help: r.Help}
}

// Ask is what a check is asked for beside the formula.
type Ask struct {
	Temperature *float64
	Working     string
	Curves      bool
}

func (a Ask) values() url.Values {
	v := url.Values{}
	if a.Temperature != nil {
		v.Set("temperature", strconv.FormatFloat(*a.Temperature, 'g', -1, 64))
	}
	if a.Working != "" {
		v.Set("working", a.Working)
	}
	if a.Curves {
		v.Set("curves", "1")
	}
	return v
}

func draftPath(id string) string { return "/api/drafts/" + url.PathEscape(id) }
