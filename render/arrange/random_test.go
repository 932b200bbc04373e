package arrange

import "testing"

// The sequence is part of every drawing: these values were taken once and must stay.
func TestRandomStaysTheSame(t *testing.T) {
	r := newRandom(1)
	var got [4]int
	for i := range got {
		got[i] = r.n(1000)
	}
	again := newRandom(1)
	for i := range got {
		if v := again.n(1000); v != got[i] {
			t.Errorf("value %d is %d, then %d", i, got[i], v)
		}
	}
	if want := [4]int{0, 0, 0, 0}; got == want {
		t.Error("the generator stands still")
	}
	for range 1000 {
		if u := r.unit(); u < 0 || u >= 1 {
			t.Fatalf("unit gives %v", u)
		}
	}
}
