package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"strings"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
)

// ownCmd tells which causes would give somebody's own readings.
type ownCmd struct {
	Car      string   `help:"The library's car that is nearest to yours." default:"compact_hatchback"`
	Clock    float64  `help:"Kilometres on the clock." default:"80000"`
	Pads     float64  `help:"Kilometres since the pads were fitted, when known."`
	Room     *float64 `help:"Degrees Celsius of the air, when known."`
	Readings []string `arg:"" optional:"" help:"CHECK=FIGURE or CHECK=WORD; without any, what can be read."`
}

func (o *ownCmd) Run(c *cli) error {
	desk, words, err := c.desk()
	if err != nil {
		return err
	}
	if err := knownCar(desk.Library(), o.Car); err != nil {
		return err
	}
	if len(o.Readings) == 0 {
		fmt.Println(words.Say("own.what"))
		for _, k := range desk.OwnChecks() {
			fmt.Println(words.Say("own.check", "id", k[0], "name", k[1], "unit", k[2]))
		}
		fmt.Println(words.Say("own.example"))
		return nil
	}
	own := play.Own{Car: o.Car, ClockKm: o.Clock, PadsKm: o.Pads, Readings: o.Readings}
	if o.Room != nil {
		own.RoomC, own.RoomTold = *o.Room, true
	}
	if err := ownRange(own); err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	told := -1
	car := desk.Library().Car(o.Car).Name
	a, err := desk.Own(ctx, own, func(share float64) {
		if told < 0 {
			fmt.Fprintln(os.Stderr, words.Say("own.working", "car", car))
		}
		if tenth := int(share * 10); tenth > told {
			told = tenth
			fmt.Fprintf(os.Stderr, "%d %%\n", 10*tenth)
		}
	})
	if err != nil {
		return err
	}
	o.print(words, car, a)
	return nil
}

// ownRange refuses a use that no car has.
func ownRange(o play.Own) error {
	pads := scenarios.PadsRange
	pads.Hi = min(pads.Hi, o.ClockKm)
	switch {
	case !scenarios.ClockRange.Has(o.ClockKm):
		return mistaken("--clock %g: want %s", o.ClockKm, scenarios.ClockRange)
	case o.PadsKm != 0 && !pads.Has(o.PadsKm):
		return mistaken("--pads %g: want %s, and no more than the clock shows, %g", o.PadsKm, scenarios.PadsRange, o.ClockKm)
	case o.RoomTold && !scenarios.RoomRange.Has(o.RoomC):
		return mistaken("--room %g: want %s", o.RoomC, scenarios.RoomRange)
	}
	return nil
}

func (o *ownCmd) print(words *assets.Words, car string, a *play.OwnAnswer) {
	if !a.Fits {
		fmt.Println(words.Say("own.nothing_fits", "car", car))
	} else {
		fmt.Println(words.Say("own.causes", "car", car))
		for i, l := range a.Lines {
			fmt.Println(words.Say("own.cause", "percent", fmt.Sprintf("%3.0f", l.Percent), "cause", l.Cause, "place", l.Place))
			if i == 0 && l.Explain != "" {
				fmt.Println("       " + l.Explain)
			}
		}
	}
	if len(a.Next) > 0 {
		fmt.Println(words.Say("own.next", "list", strings.Join(a.Next, "; ")))
	}
	for _, r := range o.Readings {
		if strings.HasPrefix(r, "lining_") || strings.HasPrefix(r, "opening_") {
			fmt.Println(words.Say("own.linings"))
			break
		}
	}
	fmt.Println(words.Say("own.no_verdict"))
}
