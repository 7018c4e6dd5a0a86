package main

import "context"

// runRefit fits the constants of the reference tables again from the readings
// they were fitted to.
func runRefit(ctx context.Context, p place, args []string) error {
	return p.goTool(ctx, append([]string{"run", "./tools/refit"}, args...)...)
}
