// Package api answers over HTTP: the pages that can only be read, and under /api
// the drafts, checks, versions and readings of a workspace in JSON. Nothing here
// computes a figure.
//
// The way of a request: guard.go lets in who holds the launch token and comes
// from this machine; routes*.go say what each address takes and gives, from
// which the OpenAPI page is made; answers.go words what is refused. events.go
// tells every open window what another has changed.
//
// The pages work without script. A working opens as the browser's own details
// element, a chart is an image made here.
package api
