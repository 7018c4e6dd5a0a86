# Thin lines over one program in Go, which works without make as well:
#   go run ./tools/dev COMMAND
# ARGS is passed on:  make run ARGS="--addr 127.0.0.1:0"

COMMANDS = run test test-long lint bench latency docs refit

.PHONY: help $(COMMANDS)

help:
	@go run ./tools/dev

$(COMMANDS):
	@go run ./tools/dev $@ $(ARGS)
