// Package client talks to a running Levigate over HTTP. It knows the shapes of
// package wire and nothing of how answers come about.
//
//	c, err := client.At("http://127.0.0.1:7420/?token=…") // as serve printed it
//	list, err := c.Drafts(ctx, "", 50)
//
// What is refused comes back as the program's own errors: a *levigate.Error with
// its code, or a *levigate.ClashError with every cell in the way.
package client
