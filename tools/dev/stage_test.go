package main

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
)

func TestStagesGoOnAfterAFailure(t *testing.T) {
	var ran []string
	say := func(name string, err error) stage {
		return stage{name, func(context.Context) error {
			ran = append(ran, name)
			return err
		}}
	}
	var log bytes.Buffer
	err := runStages(t.Context(), &log, []stage{
		say("one", errors.New("first fault")),
		say("two", nil),
		say("three", errors.New("second fault")),
	})
	if got := strings.Join(ran, " "); got != "one two three" {
		t.Errorf("ran %s", got)
	}
	if want := "2 of 3 stages failed: one, three"; err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	for _, want := range []string{"one FAILED after 0.0 s: first fault", "two passed in 0.0 s", "second fault"} {
		if !strings.Contains(log.String(), want) {
			t.Errorf("no %q in\n%s", want, log.String())
		}
	}
}

func TestStagesAllPass(t *testing.T) {
	var log bytes.Buffer
	none := func(context.Context) error { return nil }
	if err := runStages(t.Context(), &log, []stage{{"a", none}, {"b", none}}); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(log.String(), "all 2 stages passed") {
		t.Error(log.String())
	}
}

func TestInterruptEndsTheStages(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	err := runStages(ctx, &bytes.Buffer{}, []stage{
		{"first", func(context.Context) error { cancel(); return nil }},
		{"second", func(context.Context) error { t.Error("went on after an interrupt"); return nil }},
	})
	if err == nil {
		t.Error("an interrupted run counted as passed")
	}
}

func TestLongStagesBeginLikeTheShort(t *testing.T) {
	var p place
	short, long := p.testStages("./..."), p.testStages("-count=1", "./...")
	for i := range short {
		if short[i].name != long[i].name {
			t.Errorf("stage %d is %s in test and %s in test-long", i, short[i].name, long[i].name)
		}
	}
}
