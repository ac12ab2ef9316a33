package window

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/window/windowtest"
	"evenwear/physics"
)

// pumping is a bench whose caliper is pressed and let go twice a second, so
// that something moves in every frame. The caliper is the physics' own.
type pumping struct {
	corner physics.Corner
	state  physics.CornerState
	ms     int64
	view   play.BenchView
}

func newPumping() *pumping {
	spec := physics.CornerSpec{
		PistonDiameter: 54 * physics.Millimetre, K1: 60e6, K3: 2.5e15, Bridge: 120e6,
		SealRate: 0.9e6, SealFriction: 120, SealGrip: 55e-6,
		PinRate: 8e6, PinFriction: 15, PinOffset: 65 * physics.Millimetre, PadOffset: 28 * physics.Millimetre,
		TiltShare: 0.30, Boot: 300, TiltRate: 50, Gap: [2]float64{0.12 * physics.Millimetre, 0.12 * physics.Millimetre}, EarRate: 20e6,
	}
	p := &pumping{corner: physics.NewCorner(&spec, &physics.WheelCondition{}, "front_left")}
	p.view = play.BenchView{Wheel: "front_left", Ratio: 3.8, Disc: 256, Piston: 54, PinAt: 65, PadAt: 28, Vented: true, Axial: 80, Down: true, Slow: 1}
	p.view.Predict = play.PredictView{Said: -1, Computed: -1}
	p.view.Now = play.CaliperView{DiscThickness: 22, Pins: [2]string{"free", "free"}, Lining: [2][2]float64{{11, 11}, {11, 11}}}
	p.Advance(0)
	return p
}

func (p *pumping) Advance(ms int64) {
	p.ms += ms
	t := float64(p.ms%500) / 250
	mpa := 1.2 * min(t, 2-t)
	s, f, err := p.corner.Settle(p.state, &physics.CornerLoad{Pressure: mpa * physics.Megapascal})
	if err != nil {
		panic(err)
	}
	p.state = s
	v := &p.view
	v.Now.Pressure, v.Foot, v.Wanted, v.Pedal = mpa, 30*mpa, 30*mpa, 25*mpa
	v.Chamber = [2]float64{mpa, mpa}
	v.Turn, v.Time = float64(p.ms%1000)/1000, float64(p.ms)/1000
	for j := range 2 {
		v.Now.Gap[0][j] = 0.12 - (s.X-s.Y)*1e3
		v.Now.Gap[1][j] = 0.12 - (s.Y-s.Bridge)*1e3
		for i := range 2 {
			v.Now.Half[i][j] = f.Half[i][j] / 1e3
		}
	}
	v.Balance = [4]float64{f.Inner() / 1e3, f.Outer() / 1e3, f.Pin[0] / 1e3, f.Pin[1] / 1e3}
	if len(v.Plot) < 200 {
		v.Plot = append(v.Plot, play.BenchSample{Time: v.Time, Pressure: mpa, Inner: f.Inner() / 1e3, Outer: f.Outer() / 1e3})
	}
}

func (p *pumping) Do(play.Act) error         { return nil }
func (p *pumping) View() *play.BenchView     { return &p.view }
func (p *pumping) Numbers(v *play.BenchView) { *v = p.view }

// rateFor is how long frames are counted.
const rateFor = 3 * time.Second

// A counted game tells its frames a second and ends.
type counted struct {
	ebiten.Game
	from   time.Time
	frames int
}

func (c *counted) Draw(screen *ebiten.Image) {
	c.Game.Draw(screen)
	if c.from.IsZero() {
		c.from = time.Now()
	}
	c.frames++
}

func (c *counted) Update() error {
	if !c.from.IsZero() && time.Since(c.from) > rateFor {
		fmt.Printf("%.2f\n", float64(c.frames-1)/time.Since(c.from).Seconds())
		return ebiten.Termination
	}
	return c.Game.Update()
}

// still blits one static sheet in every frame, as a plain program would.
type still struct{ sheet *ebiten.Image }

func (s *still) Update() error              { return nil }
func (s *still) Draw(to *ebiten.Image)      { to.DrawImage(s.sheet, nil) }
func (s *still) Layout(w, h int) (int, int) { return w, h }

// rateChild is the child program of the frame rates.
func rateChild(kind string) error {
	app, err := testApp()
	if err != nil {
		return err
	}
	ebiten.SetWindowSize(1280, 720)
	var g ebiten.Game
	if kind == "still" {
		img, _ := app.Draw()
		g = &still{ebiten.NewImageFromImage(img)}
	} else {
		app.Show(scene.NewBench(app, newPumping()))
		ebiten.SetScreenClearedEveryFrame(false)
		g = &host{app: app}
	}
	return ebiten.RunGame(&counted{Game: g})
}

func rate(b *testing.B, s windowtest.Screen, kind string) float64 {
	b.Helper()
	self, err := os.Executable()
	if err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), childEnv+"="+kind, "DISPLAY="+s.Display)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	line, _ := bufio.NewReader(out).ReadString('\n')
	if err := cmd.Wait(); err != nil {
		b.Fatal(err)
	}
	n, err := strconv.ParseFloat(strings.TrimSpace(line), 64)
	if err != nil {
		b.Fatal(err)
	}
	return n
}

// BenchmarkFrameRate compares the moving bench with a program that blits one
// static sheet, on one screen without a graphics card, one after the other.
// Budget: at least 0.9 of it.
func BenchmarkFrameRate(b *testing.B) {
	s := windowtest.New(b)
	var moving, static float64
	n := 0
	for b.Loop() {
		static += rate(b, s, "still")
		moving += rate(b, s, "bench")
		n++
	}
	b.ReportMetric(moving/float64(n), "bench/s")
	b.ReportMetric(static/float64(n), "static/s")
	b.ReportMetric(moving/static, "ratio")
	b.ReportMetric(0, "ns/op")
}
