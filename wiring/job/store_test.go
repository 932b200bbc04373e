package job_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// writeTree writes files below a new folder and returns it.
func writeTree(t *testing.T, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		full := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

func layerFiles(h *wiring.Harness) []string {
	var files []string
	for _, l := range h.Layers {
		if l.Kind != wiring.CatalogLayer {
			files = append(files, l.File)
		}
	}
	return files
}

func TestRootOfTheSystem(t *testing.T) {
	root := writeTree(t, map[string]string{
		"shop/shop.yaml":         "shop: Quay Lane Carts\n",
		"shop/kits/small.yaml":   "kit: small\n",
		"shop/jobs/one.yaml":     "job: T-1\nuse: [small, 'sub\\two.yaml']\n",
		"shop/jobs/sub/two.yaml": "kit: two\n",
		"kits/small.yaml":        "kit: outside\n",
	})
	t.Chdir(filepath.Join(root, "shop", "jobs"))
	h, findings, err := job.Load("one.yaml", job.Options{})
	if err != nil || h == nil {
		t.Fatalf("%v\n%s", err, listing(findings))
	}
	want := []string{"../shop.yaml", "../kits/small.yaml", "sub/two.yaml", "one.yaml"}
	want[2], want[3] = "../jobs/sub/two.yaml", "../jobs/one.yaml"
	if diff := cmp.Diff(want, layerFiles(h)); diff != "" {
		t.Errorf("layers (-want +got):\n%s", diff)
	}
	t.Chdir(root)
	h, _, err = job.Load("shop/jobs/one.yaml", job.Options{})
	if err != nil || h == nil {
		t.Fatal(err)
	}
	want = []string{"shop/shop.yaml", "shop/kits/small.yaml", "shop/jobs/sub/two.yaml", "shop/jobs/one.yaml"}
	if diff := cmp.Diff(want, layerFiles(h)); diff != "" {
		t.Errorf("layers (-want +got):\n%s", diff)
	}
}

func TestLinksOfTheSystem(t *testing.T) {
	root := writeTree(t, map[string]string{
		"shop/shop.yaml":      "shop: Quay Lane Carts\n",
		"shop/job.yaml":       "job: T-1\nuse: [away, near]\n",
		"shop/kits/real.yaml": "kit: real\n",
		"secret.yaml":         "kit: secret\n",
	})
	for name, target := range map[string]string{"shop/kits/away.yaml": "../../secret.yaml", "shop/kits/near.yaml": "real.yaml"} {
		if err := os.Symlink(filepath.FromSlash(target), filepath.Join(root, filepath.FromSlash(name))); err != nil {
			t.Skipf("this system makes no symbolic links: %v", err)
		}
	}
	t.Chdir(filepath.Join(root, "shop"))
	_, findings, err := job.Load("job.yaml", job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := "job.yaml:2:7-11: error: kits/away.yaml lies outside the root . | Layers come from the folder that holds shop.yaml, and from below it\n"
	if diff := cmp.Diff(want, listing(findings)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestCallErrors(t *testing.T) {
	files := fstest.MapFS{
		"shop/shop.yaml": {Data: []byte("shop: Quay Lane Carts\n")},
		"shop/job.yaml":  {Data: []byte("job: T-1\n")},
		"shop/list.csv":  {Data: []byte("wire,from,to\n")},
	}
	tests := []struct {
		file, root, want string
		is               error
	}{
		{"", "", "job: no file was named", nil},
		{"shop/none.yaml", "", "job: shop/none.yaml: file does not exist", fs.ErrNotExist},
		{"shop/job.yaml", "other", "job: shop/job.yaml lies outside the root other", nil},
		{"../job.yaml", "", "job: ../job.yaml is no path inside the file system that was given", nil},
		{"shop", "", "job: shop is a folder", nil},
		{"shop/list.csv", "", "job: shop/list.csv is a wire list: name the job that uses it", nil},
	}
	for _, tt := range tests {
		h, findings, err := job.Load(tt.file, job.Options{FS: files, Root: tt.root})
		if h != nil || findings != nil || err == nil || err.Error() != tt.want {
			t.Errorf("%q under %q: harness %v, findings %v, error %v; want %s", tt.file, tt.root, h != nil, findings, err, tt.want)
		}
		if tt.is != nil && !errors.Is(err, tt.is) {
			t.Errorf("%q: the error is no %v", tt.file, tt.is)
		}
	}
	_, _, err := job.Load(filepath.Join(t.TempDir(), "none.yaml"), job.Options{})
	if !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "none.yaml") {
		t.Errorf("error of the system: %v", err)
	}
}

func TestLoadBeforeWithoutPlatform(t *testing.T) {
	h, findings, err := job.LoadBefore("job.yaml", job.Options{FS: fstest.MapFS{"job.yaml": {Data: []byte("job: T-1\n")}}})
	if h != nil || findings != nil || err != nil {
		t.Errorf("harness %v, findings %v, error %v; want nothing at all", h, findings, err)
	}
}

// A layer that is too long, and more layers than there may be.
func TestLimits(t *testing.T) {
	files := fstest.MapFS{"job.yaml": {Data: []byte("job: T-1\nuse: [k0]\n")}}
	for i := range job.MostLayers + 5 {
		text := "kit: chain\n"
		if i < job.MostLayers+4 {
			text += "use: [k" + itoa(i+1) + "]\n"
		}
		files["kits/k"+itoa(i)+".yaml"] = &fstest.MapFile{Data: []byte(text)}
	}
	_, findings, _ := job.Load("job.yaml", job.Options{FS: files})
	if got := listing(findings); strings.Count(got, "more than 64 layers") != 1 || len(findings) != 1 {
		t.Errorf("got:\n%s", got)
	}
	parts := "job: T-1\nparts:\n  X1..X9999: {kind: splice}\n  R1..R9999: {kind: resistor, ohms: 1 ohm}\n"
	_, findings, _ = job.Load("job.yaml", job.Options{FS: fstest.MapFS{"job.yaml": {Data: []byte(parts)}}})
	if got := listing(findings); got != "job.yaml:4:3-12: error: more than 10000 parts\n" {
		t.Errorf("got:\n%s", got)
	}
	var b strings.Builder
	b.WriteString("job: T-1\nparts:\n  X1..X2: {kind: splice}\nwires:\n")
	for i := range 12 {
		b.WriteString("  W" + itoa(i) + "0000..W" + itoa(i) + "9999: {from: X1, to: X2}\n")
	}
	_, findings, _ = job.Load("job.yaml", job.Options{FS: fstest.MapFS{"job.yaml": {Data: []byte(b.String())}}})
	if got := listing(findings); got != "job.yaml:15:3-19: error: more than 100000 wires\n" {
		t.Errorf("got:\n%s", got)
	}
}
