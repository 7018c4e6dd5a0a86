package formulafile

import "levigate"

const stepLike = "{step: 1, phase: A, text: Warm to 60 °C, temperature: 60}"

// steps reads the steps of making.
func (r *reader) steps(v value) []levigate.Step {
	var out []levigate.Step
	r.rows(v, MaxSteps, "a step", func(item value) {
		item.like = stepLike
		var s levigate.Step
		r.group(item, "a step", []field{
			{name: "step", like: "1", read: func(v value) { s.Number = r.text(v, MaxCode) }},
			{name: "phase", like: "A", read: func(v value) { s.Phase = r.text(v, MaxCode) }},
			{name: "text", like: "Stir until uniform", needs: true, read: func(v value) { s.Text = r.prose(v, MaxText) }},
			{name: "temperature", like: "60 °C", read: func(v value) { s.Temperature, s.HasTemp = r.measure(v, temperatureSpan) }},
			{name: "minutes", like: "10", read: func(v value) { s.Minutes, _ = r.measure(v, minutesSpan) }},
		})
		out = append(out, s)
	})
	return out
}
