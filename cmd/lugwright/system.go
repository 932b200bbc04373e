package main

import (
	"io"
	"io/fs"
	"os"

	"golang.org/x/term"

	"github.com/lugwright/lugwright/render/report"
)

// system is everything of the outside world that a command may use.
type system struct {
	args           []string // without the program's name
	stdin          input
	stdout, stderr stream
	getenv         func(string) string
	files          fs.FS // read instead of the operating system's files; nil: those
}

// stream is where output goes, and what is known of that place.
type stream struct {
	io.Writer
	terminal bool
	columns  int // of the terminal; 0: not known
}

// input is where answers come from, and whether a person gives them.
type input struct {
	io.Reader
	terminal bool
}

// realSystem is the one that the program runs in.
func realSystem() system {
	return system{
		args:   os.Args[1:],
		stdin:  input{os.Stdin, term.IsTerminal(int(os.Stdin.Fd()))},
		stdout: fileStream(os.Stdout),
		stderr: fileStream(os.Stderr),
		getenv: os.Getenv,
	}
}

func fileStream(file *os.File) stream {
	s := stream{Writer: file, terminal: term.IsTerminal(int(file.Fd()))}
	if s.terminal {
		if columns, _, err := term.GetSize(int(file.Fd())); err == nil {
			s.columns = columns
		}
	}
	return s
}

// textOptions is how text is set for a stream: in colour on a terminal alone, and there
// not if NO_COLOR is set to anything or the terminal is a dumb one.
func (s system) textOptions(to stream) report.TextOptions {
	return report.TextOptions{
		Width:  to.columns,
		Colour: to.terminal && s.getenv("NO_COLOR") == "" && s.getenv("TERM") != "dumb",
	}
}

// stickyWriter remembers the first error of a writer and writes nothing after it.
type stickyWriter struct {
	to  io.Writer
	err error
}

func (s *stickyWriter) Write(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	n, err := s.to.Write(p)
	s.err = err
	return n, err
}
