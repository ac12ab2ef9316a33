package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// wheelPlaces in the order of physics.Wheel.
var wheelPlaces = [4]string{"front_left", "front_right", "rear_left", "rear_right"}

// A legendLine is one sign of the plan and what it says.
type legendLine struct {
	sign func(c *draw.Canvas, at draw.Pt)
	id   string // wording
	on   []bool
}

// planLegend says how the car stands, in the signs of the plan and in words,
// down to a lowest baseline, closer together the more there is to say.
func planLegend(c *draw.Canvas, l *lettering, p *play.PlanView, lowest float64) {
	ends := []string{l.word("stations.front"), l.word("stations.rear")}
	var wheels []string
	for _, id := range wheelPlaces {
		wheels = append(wheels, l.word("stations.plan_"+id))
	}
	hand := "stations.handbrake_off"
	if p.Handbrake {
		hand = "stations.handbrake"
	}
	type said struct {
		sign func(c *draw.Canvas, at draw.Pt)
		text string
	}
	lines := []said{{nil, l.word(hand)}}
	for _, line := range []legendLine{
		{signChock, "stations.chocked", p.Chocked[:]},
		{signLift, "stations.lifted", p.Lifted[:]},
		{signStand, "stations.on_stand", p.OnStand[:]},
		{signSlack, "stations.nuts_slack", p.NutsSlack[:]},
		{signOff, "stations.wheel_off", p.WheelOff[:]},
		{signHot, "stations.disc_hot", p.DiscHot[:]},
	} {
		names := wheels
		if len(line.on) == len(ends) {
			names = ends
		}
		if where := named(line.on, names); where != "" {
			lines = append(lines, said{line.sign, l.fill(line.id, "where", where)})
		}
	}
	const top, wide, close = 496.0, 19.0, 15.0
	pitch := clamp((lowest-top)/max(float64(len(lines)-1), 1), close, wide)
	for i, line := range lines {
		y := top + pitch*float64(i)
		if y > lowest {
			return
		}
		x := 30.0
		if line.sign != nil {
			line.sign(c, draw.Pt{X: 38, Y: y})
			x = 56
		}
		c.Text(draw.Pt{X: x, Y: y}, draw.SmallText, c.Theme.Ink, fit(c, l, line.text, draw.SmallText, 260-x))
	}
}

func signChock(c *draw.Canvas, at draw.Pt) {
	t := [3]draw.Pt{{X: at.X, Y: at.Y - 10}, {X: at.X + 7, Y: at.Y}, {X: at.X - 7, Y: at.Y}}
	c.Outline(t[:], draw.Thin.Wide(1.4))
}

func signLift(c *draw.Canvas, at draw.Pt) {
	c.Circle(draw.Pt{X: at.X, Y: at.Y - 5}, 5, nil, draw.Visible)
}

func signStand(c *draw.Canvas, at draw.Pt) {
	t := [4]draw.Pt{{X: at.X - 4, Y: at.Y - 7}, {X: at.X + 4, Y: at.Y - 7}, {X: at.X + 8, Y: at.Y}, {X: at.X - 8, Y: at.Y}}
	c.Outline(t[:], draw.Thin.Wide(1.4))
	c.Line(draw.Pt{X: at.X, Y: at.Y - 7}, draw.Pt{X: at.X, Y: at.Y - 12}, draw.Visible)
}

func signSlack(c *draw.Canvas, at draw.Pt) { slackNut(c, draw.Pt{X: at.X, Y: at.Y - 4}) }

func signHot(c *draw.Canvas, at draw.Pt) { hotDisc(c, draw.Pt{X: at.X, Y: at.Y - 5}) }

func signOff(c *draw.Canvas, at draw.Pt) {
	k := draw.Rect{X: at.X - 6, Y: at.Y - 11, W: 12, H: 12}.Corners()
	c.Outline(k[:], draw.Hidden)
}

// named joins the names of what is on.
func named(on []bool, names []string) string {
	var list []string
	for i, yes := range on {
		if yes {
			list = append(list, names[i])
		}
	}
	return strings.Join(list, ", ")
}
