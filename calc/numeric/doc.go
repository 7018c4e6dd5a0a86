// Package numeric holds the few numerical tools the sciences share. Each takes
// a plain function and says in an error when it could not do its work.
package numeric
