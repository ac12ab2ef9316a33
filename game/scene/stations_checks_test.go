package scene

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// readyForRoad looks at what must be looked at before a car is driven, and drives.
var readyForRoad = []play.Act{
	{Do: play.Go, What: "seat"}, {Do: play.Check, What: "pedal_travel"}, {Do: play.Write, Text: "50"},
	{Do: play.Check, What: "hold_sink"}, {Do: play.Write, Text: "0"}, {Do: play.Go, What: "front_left"},
	{Do: play.Check, What: "wetness@front_left"}, {Do: play.Write, Text: "dry"},
	{Do: play.Check, What: "opening_outer@front_left"}, {Do: play.Write, Text: "plenty"},
	{Do: play.Go, What: "road"}, {Do: play.Prepare, What: "clear_road"}, {Do: play.Prepare, What: "stop_50"}, {Do: play.Prepare, What: "drive"},
}

// everyCheck makes each check once, at the first wheel that allows it, and calls
// see while its instrument waits to be read; see writes or skips it.
func everyCheck(t *testing.T, a *App, see func(j *Job, inst inspect.Instance)) {
	t.Helper()
	done := map[inspect.ID]bool{}
	for _, acts := range [][]play.Act{nil, wheelOffActs, readyForRoad} {
		j, _ := openJob(t, a, "warm_wheel", 3)
		for _, act := range acts {
			if !j.do(act) {
				t.Fatalf("%+v: %s", act, j.view.Notice)
			}
		}
		for _, inst := range inspect.Instances() {
			c, _ := inspect.Find(inst.Check)
			place := string(c.Station)
			if inst.PerWheel && c.Station != inspect.Road {
				place = inst.Wheel.String()
			}
			if done[inst.Check] || !j.do(play.Act{Do: play.Go, What: place}) || !j.do(play.Act{Do: play.Check, What: inst.String()}) || j.view.Instrument == nil {
				continue
			}
			done[inst.Check] = true
			see(j, inst)
			if j.view.Instrument != nil {
				t.Fatalf("%s still waits to be read", inst)
			}
		}
	}
	if want := len(inspect.All()); len(done) != want {
		t.Fatalf("%d of %d checks were reached", len(done), want)
	}
}

// TestEveryCheckIsReadByItsMarks: an eye that goes by the marks alone can read
// each instrument, what it reads is taken and stands in the notebook under a name
// that is not cut, and the division is stated in words.
func TestEveryCheckIsReadByItsMarks(t *testing.T) {
	a := testApp(t, false)
	see := perceived(t, a)
	everyCheck(t, a, func(j *Job, inst inspect.Instance) {
		s := j.sheet.(*stations)
		s.fresh()
		v := j.view.Instrument
		if len(v.Words) == 0 && !strings.Contains(s.scale, v.Unit) {
			t.Errorf("%s states its division as %q, without its unit %s", inst, s.scale, v.Unit)
		}
		text, err := playtest.Read(v, func(p string) string { return see(string(inst.Check), p) })
		if err != nil {
			t.Errorf("%s: %v", inst, err)
			j.do(v.Skip.Act)
			return
		}
		if !j.do(play.Act{Do: play.Write, What: v.Check, Text: text}) {
			t.Errorf("%s: %q was refused: %s", inst, text, j.view.Notice)
			j.do(v.Skip.Act)
			return
		}
		n := j.view.Notebook[len(j.view.Notebook)-1]
		c, p := a.still, s.page()
		for _, room := range []struct {
			text string
			st   draw.TextStyle
			w    float64
		}{
			{s.noteWhere(&n), draw.SmallText, p.what - 890},
			{n.Unit, draw.SmallText, 34},
			{n.Written, draw.HandText.At(17), 130},
			{s.noteName(&n), draw.SmallText, p.value - p.what - 8 - max(c.Measure(draw.HandText.At(17), n.Written), c.Measure(draw.HandText.At(17), s.word("play.not_read")))},
		} {
			if w := c.Measure(room.st, room.text); w > room.w {
				t.Errorf("%s: the notebook cuts %q: %.0f wide, there is room for %.0f", inst, room.text, w, room.w)
			}
		}
	})
}

// TestEveryCheckIsDrawn draws the sheet of each check. With SHEETS set to a folder
// the pictures are left there to be looked at.
func TestEveryCheckIsDrawn(t *testing.T) {
	folder := os.Getenv("SHEETS")
	if testing.Short() {
		t.Skip("draws 66 sheets")
	}
	for _, slate := range []bool{false, true} {
		a := testApp(t, slate)
		everyCheck(t, a, func(j *Job, inst inspect.Instance) {
			img, _ := a.Draw()
			ground := img.RGBAAt(268, 120)
			same := true
			for y := 100; y < 525; y++ {
				for x := 266; x < 870; x++ {
					same = same && img.RGBAAt(x, y) == ground
				}
			}
			if same {
				t.Errorf("%s: nothing is seen", inst)
			}
			if folder != "" {
				f, err := os.Create(filepath.Join(folder, a.theme.Name+"-"+string(inst.Check)+".png"))
				if err == nil {
					err = png.Encode(f, img)
				}
				if err != nil {
					t.Fatal(err)
				}
				f.Close()
			}
			j.do(j.view.Instrument.Skip.Act)
		})
		if folder == "" {
			return // the other theme draws the same things
		}
	}
}

// TestCautionsAreAllSeen: in every job, at every place, by mouse and by touch, all
// that is known and every caution stand above the notice, however long that is.
func TestCautionsAreAllSeen(t *testing.T) {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, touch := range []bool{false, true} {
		a := testApp(t, false)
		a.Resize(1280, 720, touch)
		for _, job := range lib.Jobs {
			j, _ := openJob(t, a, job.ID, 3)
			for _, p := range j.view.Plan.Places {
				if p.Action.Enabled && !j.do(p.Action.Act) {
					t.Fatal(j.view.Notice)
				}
				s := j.sheet.(*stations)
				parts, cautions := []string{""}, map[string]bool{}
				for _, n := range j.view.Nodes {
					if n.Part != "" {
						parts = append(parts, n.Part)
					}
					if n.Role == "caution" {
						cautions[n.ID] = true
					}
				}
				seen += len(cautions)
				for _, s.part = range parts {
					s.layout()
					end := s.textEnd(3)
					last := s.known(a.still, 112, end) - draw.SentenceText.LineHeight()
					if last > end {
						t.Errorf("%s at %s %s (touch %v): the last caution stands at %.0f, the notice begins below %.0f", job.ID, p.ID, s.part, touch, last, end)
					}
					for i := range j.view.Nodes {
						if n := &j.view.Nodes[i]; s.here(n) {
							delete(cautions, n.ID)
						}
					}
				}
				for id := range cautions {
					t.Errorf("%s at %s: %s stands at no part", job.ID, p.ID, id)
				}
			}
		}
	}
	if seen < 200 {
		t.Errorf("only %d cautions were looked for", seen)
	}
}

// TestNoticeOfABrokenCautionCarriesTheSign: news that a caution was not kept has
// the sign beside it, a refusal has not, on the sheet as beside an instrument.
func TestNoticeOfABrokenCautionCarriesTheSign(t *testing.T) {
	a := testApp(t, false)
	caution := a.theme.Caution
	signs := func(r image.Rectangle) (n int) {
		img, _ := a.Draw()
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				if img.RGBAAt(x, y) == caution {
					n++
				}
			}
		}
		return n
	}
	j, _ := openJob(t, a, "warm_wheel", 3)
	below, beside := image.Rect(264, 440, 870, 528), image.Rect(874, 364, 1260, 436)
	if n := signs(below); n > 0 {
		t.Errorf("a sign stands where nothing was broken: %d pixels", n)
	}
	if !j.do(play.Act{Do: play.Prepare, What: "lift_front"}) || signs(below) < 10 {
		t.Errorf("lifting without chocks: %q has no sign", j.view.Notice)
	}
	j.do(play.Act{Do: play.Prepare, What: "lift_rear"})
	if n := signs(below); n > 0 || j.view.Notice == "" {
		t.Errorf("the refusal %q carries a caution sign", j.view.Notice)
	}
	j.do(play.Act{Do: play.Go, What: "front_left"})
	if !j.do(play.Act{Do: play.Check, What: "spin@front_left"}) || signs(beside) < 10 {
		t.Errorf("beside the instrument %q has no sign", j.view.Notice)
	}
}

// TestOwnersWordsAreWhole: what the owner said and the facts of the title block
// are lettered whole in every job, on stations and beside an instrument.
func TestOwnersWordsAreWhole(t *testing.T) {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	a := testApp(t, false)
	for _, job := range lib.Jobs {
		j, _ := openJob(t, a, job.ID, 3)
		s := j.sheet.(*stations)
		_, lines, whole := s.said(a.still)
		if !whole || len(lines) == 0 {
			t.Errorf("%s: the owner is cut short: %q", job.ID, lines)
		}
		for _, f := range []struct {
			text string
			room float64
		}{{j.view.Title.Car, 150 - 8}, {j.view.Title.Job, titleBlock.W - 138 - 80 - 60 - 8}, {j.view.Title.Place, 138 - 8}} {
			if w := a.still.Measure(draw.LabelText, f.text); w > f.room {
				t.Errorf("%s: the title block cuts %q: %.0f wide in %.0f", job.ID, f.text, w, f.room)
			}
		}
	}
}

// TestNotebookTurns: a notebook with more lines than are in sight is turned by its
// keys, and Delete strikes out the line that Tab has come to.
func TestNotebookTurns(t *testing.T) {
	for _, touch := range []bool{false, true} {
		a := testApp(t, false)
		a.Resize(1280, 720, touch)
		acts := []play.Act{{Do: play.Go, What: "seat"}}
		for range 9 {
			acts = append(acts, play.Act{Do: play.Check, What: "warning_lamp"}, play.Act{Do: play.Write, Text: "dark"})
		}
		j, _ := openJob(t, a, "warm_wheel", 3)
		for _, act := range acts {
			if !j.do(act) {
				t.Fatal(j.view.Notice)
			}
		}
		a.Draw()
		s := j.sheet.(*stations)
		rows := s.page().rows
		for range 20 {
			a.Handle(key("PageUp"))
		}
		if first, end := s.sight(); first != 0 || end != rows {
			t.Errorf("turned back to the beginning lines %d to %d are in sight, want 0 to %d", first, end, rows)
		}
		for s.targets.Focus != "note2" {
			a.Handle(key("Tab"))
		}
		a.Handle(key("Delete"))
		if n := j.view.Notebook; !n[1].Struck || n[0].Struck || n[2].Struck {
			t.Errorf("Delete on the second line struck %v %v %v", n[0].Struck, n[1].Struck, n[2].Struck)
		}
		a.Handle(key("PageDown"))
		if first, _ := s.sight(); first != 1 {
			t.Errorf("one line on, the first in sight is %d, want 1", first)
		}
		for i, k := range s.keys {
			for _, o := range s.keys[:i] {
				if !k.tick && !o.tick && k.Rect.Overlaps(o.Rect) {
					t.Errorf("keys %s and %s meet", k.id, o.id)
				}
			}
		}
	}
}
