package scene

import (
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// wheelPlaces in the order of physics.Wheel.
var wheelPlaces = [4]string{"front_left", "front_right", "rear_left", "rear_right"}

// planLegend says how the car stands, in the signs of the plan and in words,
// down to a lowest baseline.
func planLegend(c *draw.Canvas, l *lettering, p *play.PlanView, lowest float64) {
	y, x := 500.0, 56.0
	line := func(sign func(draw.Pt), id, where string) {
		if where == "" || y > lowest {
			return
		}
		sign(draw.Pt{X: 38, Y: y})
		c.Text(draw.Pt{X: x, Y: y}, draw.SmallText, c.Theme.Ink, fit(c, l, l.fill(id, "where", where), draw.SmallText, 204))
		y += 19
	}
	var ends [2]string
	for i, id := range [2]string{"stations.front", "stations.rear"} {
		ends[i] = l.word(id)
	}
	line(func(at draw.Pt) {
		t := [3]draw.Pt{{X: at.X, Y: at.Y - 10}, {X: at.X + 7, Y: at.Y}, {X: at.X - 7, Y: at.Y}}
		c.Outline(t[:], draw.Thin.Wide(1.4))
	}, "stations.chocked", named(p.Chocked[:], ends[:]))
	line(func(at draw.Pt) { c.Circle(draw.Pt{X: at.X, Y: at.Y - 5}, 5, nil, draw.Visible) }, "stations.lifted", named(p.Lifted[:], ends[:]))
	var wheels [4]string
	for i, id := range wheelPlaces {
		wheels[i] = l.word("stations.plan_" + id)
	}
	line(func(at draw.Pt) {
		t := [4]draw.Pt{{X: at.X - 4, Y: at.Y - 8}, {X: at.X + 4, Y: at.Y - 8}, {X: at.X + 8, Y: at.Y}, {X: at.X - 8, Y: at.Y}}
		c.Outline(t[:], draw.Thin.Wide(1.4))
		c.Line(draw.Pt{X: at.X, Y: at.Y - 8}, draw.Pt{X: at.X, Y: at.Y - 13}, draw.Visible)
	}, "stations.on_stand", named(p.OnStand[:], wheels[:]))
	line(func(at draw.Pt) {
		k := draw.Rect{X: at.X - 6, Y: at.Y - 12, W: 12, H: 14}.Corners()
		c.Outline(k[:], draw.Hidden)
	}, "stations.wheel_off", named(p.WheelOff[:], wheels[:]))
	hand := "stations.handbrake_off"
	if p.Handbrake {
		hand = "stations.handbrake"
	}
	if y <= lowest {
		c.Text(draw.Pt{X: 30, Y: y}, draw.SmallText, c.Theme.Ink, l.word(hand))
	}
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
