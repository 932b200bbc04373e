// Package house holds no code: its tests keep the repository as its documents describe it.
// They read source files and documents, never the results of a build, so they are quick.
//
//	imports_test.go   who may import whom
//	habits_test.go    what code may not do: print, ask the clock, be without a package comment
//	documents_test.go every path and command that README.md and DEVELOPERS.md name exists
package house
