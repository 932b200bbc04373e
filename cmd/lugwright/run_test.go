package main

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"testing/fstest"
)

// try runs the program on files in memory.
func try(files fstest.MapFS, args ...string) (code exit, stdout, stderr string) {
	var out, err bytes.Buffer
	s := system{
		args:   args,
		stdout: stream{Writer: &out},
		stderr: stream{Writer: &err},
		getenv: func(string) string { return "" },
		files:  files,
	}
	code = run(s)
	return code, out.String(), err.String()
}

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

// Output that is lost is told and counts, whatever the command itself would have answered.
func TestLostOutput(t *testing.T) {
	for _, args := range [][]string{
		{"version"}, {"help"}, {"help", "check"}, {"check", "--help"}, {"kinds"}, {"kinds", "reducer"},
		{"explain"}, {"explain", "fused-consumer"}, {"check", "nowhere.yaml"},
		{"check", "--output", "json", "nowhere.yaml"}, {"check", "--output", "sarif", "nowhere.yaml"},
	} {
		var err bytes.Buffer
		code := run(system{
			args:   args,
			stdout: stream{Writer: full{}},
			stderr: stream{Writer: &err},
			getenv: func(string) string { return "" },
			files:  fstest.MapFS{},
		})
		if want := "lugwright: standard output: short write\n"; code != unwritten || err.String() != want {
			t.Errorf("%v: exit %d, %q; want %d, %q", args, code, err.String(), unwritten, want)
		}
	}
}

// Colour is for terminals, unless someone says no.
func TestColour(t *testing.T) {
	for _, c := range []struct {
		name        string
		terminal    bool
		environment map[string]string
		want        bool
	}{
		{"pipe", false, nil, false},
		{"terminal", true, map[string]string{"TERM": "xterm"}, true},
		{"terminal with NO_COLOR", true, map[string]string{"TERM": "xterm", "NO_COLOR": "1"}, false},
		{"terminal with an empty NO_COLOR", true, map[string]string{"NO_COLOR": ""}, true}, // as its convention has it
		{"dumb terminal", true, map[string]string{"TERM": "dumb"}, false},
		{"pipe with TERM", false, map[string]string{"TERM": "xterm"}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			run(system{
				args:   []string{"check", "nowhere.yaml"},
				stdout: stream{Writer: &out, terminal: c.terminal, columns: 80},
				stderr: stream{Writer: io.Discard},
				getenv: func(name string) string { return c.environment[name] },
				files:  fstest.MapFS{},
			})
			if got := strings.Contains(out.String(), "\x1b["); got != c.want {
				t.Errorf("coloured: %v, want %v, in %q", got, c.want, out.String())
			}
		})
	}
}

// What a command needs for its help must be there, and help must not promise what the
// command refuses.
func TestCommandsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range commands() {
		if seen[c.name] {
			t.Errorf("%s is listed twice", c.name)
		}
		seen[c.name] = true
		if c.short == "" || strings.HasSuffix(c.short, ".") || c.long == "" || c.run == nil {
			t.Errorf("%s lacks a short or long text, or nothing runs it", c.name)
		}
		if len(c.examples) == 0 {
			t.Errorf("%s has no example", c.name)
		}
		for _, line := range strings.Split(c.help(), "\n") {
			if len([]rune(line)) > 100 {
				t.Errorf("help %s: a line of %d characters: %s", c.name, len([]rune(line)), line)
			}
		}
		for _, e := range c.examples {
			words := strings.Fields(e)
			if len(words) < 2 || words[0] != "lugwright" || words[1] != c.name {
				t.Errorf("%s: example %q calls something else", c.name, e)
			}
		}
	}
}

func TestOperands(t *testing.T) {
	for _, c := range []struct {
		operands    operands
		usage       string
		given, want string
	}{
		{operands{}, "", "", ""},
		{operands{}, "", "a", `takes nothing but flags, not "a"`},
		{operands{"JOB", 1, 1}, "JOB", "", "name a JOB"},
		{operands{"JOB", 1, 1}, "JOB", "a", ""},
		{operands{"JOB", 1, 1}, "JOB", "a b", `takes one JOB, not also "b"`},
		{operands{"RULE", 0, 1}, "[RULE]", "", ""},
		{operands{"JOB", 1, -1}, "JOB...", "a b c", ""},
		{operands{"JOB", 0, -1}, "[JOB...]", "", ""},
	} {
		if got := c.operands.String(); got != c.usage {
			t.Errorf("%+v is shown as %q, want %q", c.operands, got, c.usage)
		}
		if got := c.operands.fault(strings.Fields(c.given)); got != c.want {
			t.Errorf("%+v given %q: %q, want %q", c.operands, c.given, got, c.want)
		}
	}
}

func TestChoices(t *testing.T) {
	var got []string
	c := choices{&got, []string{"48V", "12V", "posts"}}
	for _, list := range []string{"posts", "48V, posts"} {
		if err := c.Set(list); err != nil {
			t.Fatal(err)
		}
	}
	if c.String() != "48V,posts" {
		t.Errorf("got %s, want the order of the list, each once", c)
	}
	for _, bad := range []string{"", "48v", "48V;12V", "48V,"} {
		if c.Set(bad) == nil {
			t.Errorf("%q is accepted", bad)
		}
	}
}

func TestCheckReadsGivenFiles(t *testing.T) {
	code, out, err := try(fstest.MapFS{"shop/a.yaml": {Data: []byte("job: 1\nlenght: 3\n")}}, "check", "shop/a.yaml")
	if code != unusable || err != "" {
		t.Errorf("exit %d, %q; want %d and nothing on standard error", code, err, unusable)
	}
	for _, want := range []string{"shop/a.yaml:2:", "    2 | lenght: 3\n", "^^^^^^"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}
