package scenarios

import "testing"

// TestExcludes: each vessel is filled by itself; two remedies for one vessel, or
// for one part that is no vessel, exclude each other.
func TestExcludes(t *testing.T) {
	lib, err := Embedded()
	if err != nil {
		t.Fatal(err)
	}
	vessels := [][]string{{"fill_oil", "draw_oil"}, {"fill_coolant", "draw_coolant", "mend_coolant_leak"}, {"fill_steering"}, {"fill_washer"}, {"renew_lamp"}}
	for i, mine := range vessels {
		for k, others := range vessels {
			for _, a := range mine {
				for _, b := range others {
					if got := lib.Remedy(a).Excludes(lib.Remedy(b)); got != (i == k) {
						t.Errorf("%s excludes %s: %t", a, b, got)
					}
				}
			}
		}
	}
	for _, x := range []struct {
		a, b string
		want bool
	}{{"renew_pins", "clean_pins_silicone", true}, {"top_up", "renew_fluid", true}, {"renew_pins", "renew_pads", false}, {"fill_oil", "pour_oil", false}} {
		if got := lib.Remedy(x.a).Excludes(lib.Remedy(x.b)); got != x.want {
			t.Errorf("%s excludes %s: %t", x.a, x.b, got)
		}
	}
}
