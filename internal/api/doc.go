// Package api answers over HTTP: so far the read-only page of the workshop's
// formulas. Routes are listed in handler.go; each page is a view model made
// from an assessment and a template of the ui package. Nothing here computes a
// figure.
//
// The page works without script. A working opens as the browser's own details
// element, a chart is an image made here, and the style sheet is the only other
// file, so the content policy can forbid everything else.
package api
