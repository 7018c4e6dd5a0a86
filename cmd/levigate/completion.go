package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/alecthomas/kong"

	"levigate/internal/program"
)

type completionCommand struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"bash, zsh or fish."`
}

func (completionCommand) Help() string {
	return "bash: source <(levigate completion bash). zsh: source <(levigate completion zsh), after compinit. " +
		"fish: levigate completion fish | source." + exitHelp
}

// Run prints a script made from the command line as it is declared.
func (c *completionCommand) Run(s *session) error {
	words := wordsOf(s)
	switch c.Shell {
	case "bash":
		bash(s.out, words)
	case "zsh":
		zsh(s.out, words)
	case "fish":
		fish(s.out, words)
	}
	return nil
}

// command is what may stand behind one command word.
type command struct {
	name, help string
	flags      []flag
	words      []string // names it takes
	files      string   // it takes files of this pattern
}

type flag struct{ name, help string }

// wordsOf reads the declared command line, and adds the names that calc and
// explain take.
func wordsOf(s *session) []command {
	var out []command
	for _, node := range s.model.Model.Children {
		if node.Type != kong.CommandNode || node.Hidden {
			continue
		}
		c := command{name: node.Name, help: node.Help, flags: []flag{{"help", "Show what the command takes."}}}
		for _, f := range node.Flags {
			c.flags = append(c.flags, flag{f.Name, f.Help})
		}
		switch node.Name {
		case "assess", "cost", "ingredients", "weigh":
			c.files = "*.yaml"
		case "backup", "restore":
			c.files = "*"
		case "calc":
			for _, m := range program.Calcs() {
				c.words = append(c.words, m.ID)
			}
		case "explain":
			for _, e := range s.Explains() {
				c.words = append(c.words, e[0])
			}
		case "completion":
			c.words = []string{"bash", "zsh", "fish"}
		}
		out = append(out, c)
	}
	return out
}

func (c command) all() string {
	var words []string
	for _, f := range c.flags {
		words = append(words, "--"+f.name)
	}
	return strings.Join(append(words, c.words...), " ")
}

func names(commands []command) string {
	var out []string
	for _, c := range commands {
		out = append(out, c.name)
	}
	return strings.Join(out, " ")
}

func bash(w io.Writer, commands []command) {
	fmt.Fprintf(w, "_levigate() {\n  local word=${COMP_WORDS[COMP_CWORD]}\n  if [ \"$COMP_CWORD\" -eq 1 ]; then\n"+
		"    COMPREPLY=($(compgen -W %s -- \"$word\"))\n    return\n  fi\n  case ${COMP_WORDS[1]} in\n", quote(names(commands)+" --help --version"))
	for _, c := range commands {
		files := ""
		if c.files != "" {
			files = " $(compgen -f -X " + quote("!"+c.files) + " -- \"$word\") $(compgen -d -- \"$word\")"
		}
		fmt.Fprintf(w, "    %s) COMPREPLY=($(compgen -W %s -- \"$word\")%s);;\n", c.name, quote(c.all()), files)
	}
	fmt.Fprint(w, "  esac\n}\ncomplete -o filenames -o default -F _levigate levigate\n")
}

func zsh(w io.Writer, commands []command) {
	fmt.Fprint(w, "#compdef levigate\n_levigate() {\n  if (( CURRENT == 2 )); then\n    local -a commands=(\n")
	for _, c := range commands {
		fmt.Fprintf(w, "      %s\n", quote(c.name+":"+c.help))
	}
	fmt.Fprint(w, "    )\n    _describe command commands\n    return\n  fi\n  case $words[2] in\n")
	for _, c := range commands {
		files := ""
		if c.files != "" {
			files = "; _files -g " + quote(c.files)
		}
		fmt.Fprintf(w, "    %s) compadd -- %s%s;;\n", c.name, c.all(), files)
	}
	fmt.Fprint(w, "  esac\n}\ncompdef _levigate levigate\n")
}

func fish(w io.Writer, commands []command) {
	fmt.Fprint(w, "complete -c levigate -f\n")
	for _, c := range commands {
		fmt.Fprintf(w, "complete -c levigate -n __fish_use_subcommand -a %s -d %s\n", c.name, quote(c.help))
		within := fmt.Sprintf("complete -c levigate -n '__fish_seen_subcommand_from %s'", c.name)
		for _, f := range c.flags {
			fmt.Fprintf(w, "%s -l %s -d %s\n", within, f.name, quote(f.help))
		}
		if len(c.words) > 0 {
			fmt.Fprintf(w, "%s -a %s\n", within, quote(strings.Join(c.words, " ")))
		}
		if c.files != "" {
			fmt.Fprintf(w, "%s -F\n", within)
		}
	}
}

// quote makes one word of a text for any of the three shells.
func quote(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }
