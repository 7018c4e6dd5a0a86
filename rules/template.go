package rules

import "strings"

// fill puts arguments into a template: {name}, {name:2}, {name:2 g}. An
// argument that was not handed in stays as it is written, for the proof to
// find; a person never meets one.
func fill(template string, args Args) string {
	if !strings.Contains(template, "{") {
		return template
	}
	var b strings.Builder
	b.Grow(len(template) + 64)
	pieces(template, func(text string, is bool) {
		if is {
			name, how, _ := strings.Cut(text, ":")
			if v, ok := args[name]; ok {
				write(&b, v, how)
				return
			}
			text = "{" + text + "}"
		}
		b.WriteString(text)
	})
	return b.String()
}

// pieces cuts a template into text and arguments, losing nothing.
func pieces(template string, each func(text string, isArgument bool)) {
	for template != "" {
		open := strings.IndexByte(template, '{')
		if open < 0 {
			each(template, false)
			return
		}
		end := strings.IndexByte(template[open:], '}')
		if end < 0 {
			each(template, false)
			return
		}
		if open > 0 {
			each(template[:open], false)
		}
		each(template[open+1:open+end], true)
		template = template[open+end+1:]
	}
}

// arguments lists the names a message uses, each once.
func (m Message) arguments() map[string]bool {
	out := map[string]bool{}
	for _, template := range []string{m.Text, m.Help, m.Needs} {
		pieces(template, func(text string, is bool) {
			if is {
				name, _, _ := strings.Cut(text, ":")
				out[name] = true
			}
		})
	}
	return out
}
