package main

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
)

// full is a disk with so much room left.
type full struct{ room int }

func (f *full) Write(b []byte) (int, error) {
	if len(b) > f.room {
		n := f.room
		f.room = 0
		return n, errors.New("no space left on device")
	}
	f.room -= len(b)
	return len(b), nil
}

// An answer cut short never ends like a whole one, whichever command wrote it.
func TestFullDiskIsSaid(t *testing.T) {
	prices := "../../examples/prices.csv"
	for name, args := range map[string][]string{
		"weigh":            {"weigh", example("HP-01")},
		"weigh csv":        {"weigh", example("HP-01"), "--format", "csv"},
		"weigh json":       {"weigh", example("HP-01"), "--format", "json"},
		"cost":             {"cost", example("HP-01"), "--prices", prices, "--on", "2026-06-30"},
		"cost csv":         {"cost", example("HP-01"), "--prices", prices, "--on", "2026-06-30", "--format", "csv"},
		"ingredients":      {"ingredients", example("HP-01")},
		"assess":           {"assess", example("HP-01")},
		"a broken formula": {"assess", example("NG-09")},
		"explain":          {"explain", "Glycerin"},
		"calc":             {"calc", "weighing.minimum", "d=0.01", "s=0.01", "tolerance=1"},
		"calc --list":      {"calc", "--list"},
	} {
		var errs bytes.Buffer
		if status := run(context.Background(), args, strings.NewReader(""), &full{room: 60}, &errs); status != statusFault || strings.Count(errs.String(), "no space left") != 1 {
			t.Errorf("%s: status %d, %s", name, status, errs.String())
		}
		errs.Reset()
		if status := run(context.Background(), args, strings.NewReader(""), &full{room: 1 << 20}, &errs); status == statusFault {
			t.Errorf("%s with room: status %d, %s", name, status, errs.String())
		}
	}
}
