// Package svgtest looks at SVG files with a renderer that is not ours.
package svgtest

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Tool returns the path of an external program. Where it is missing the test is skipped,
// or fails if the environment variable LUGWRIGHT_TOOLS is "required".
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("LUGWRIGHT_TOOLS") == "required" {
			t.Fatalf("%s is required and not installed", name)
		}
		t.Skipf("%s is not installed", name)
	}
	return path
}

// Render draws a file with librsvg's rsvg-convert at a resolution in dots per inch, on
// white. It fails the test if the program complains. env adds to the environment.
func Render(t testing.TB, file []byte, dpi int, env ...string) image.Image {
	t.Helper()
	tool := Tool(t, "rsvg-convert")
	d := strconv.Itoa(dpi)
	cmd := exec.Command(tool, "--dpi-x", d, "--dpi-y", d, "--background-color", "white", "--format", "png")
	cmd.Stdin = bytes.NewReader(file)
	cmd.Env = append(os.Environ(), env...)
	var out, complaints bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		t.Fatalf("rsvg-convert: %v\n%s", err, complaints.Bytes())
	}
	if s := strings.TrimSpace(complaints.String()); s != "" {
		t.Fatalf("rsvg-convert complains: %s", s)
	}
	img, err := png.Decode(&out)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// Ink counts the pixels of a part of an image that are darker than half grey.
func Ink(img image.Image, r image.Rectangle) int {
	n := 0
	r = r.Intersect(img.Bounds())
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			red, green, blue, _ := img.At(x, y).RGBA()
			if (299*red+587*green+114*blue)/1000 < 0x8000 {
				n++
			}
		}
	}
	return n
}

// FontsFrom makes font files all that fontconfig knows, and so all that rsvg-convert draws
// with: it returns what to add to the environment.
func FontsFrom(t testing.TB, fonts ...[]byte) string {
	t.Helper()
	dir := t.TempDir()
	for i, font := range fonts {
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("face%d.ttf", i)), font, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	conf := filepath.Join(dir, "fonts.conf")
	text := fmt.Sprintf(`<?xml version="1.0"?><fontconfig><dir>%s</dir><cachedir>%s</cachedir></fontconfig>`, dir, filepath.Join(dir, "cache"))
	if err := os.WriteFile(conf, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return "FONTCONFIG_FILE=" + conf
}
