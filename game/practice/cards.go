package practice

import (
	"slices"
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v4"

	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// A Card is when a cause that was met comes back.
type Card struct {
	Cause string
	Met   time.Time // last
	Due   time.Time
}

// Marks of the diagnosis from which a card is rated hard, good and easy; below
// the first it is to be learnt again. Our own choice.
const (
	hardFrom = 40
	goodFrom = 65
	easyFrom = 90
)

// diagnosis is the mark that rates a card.
const diagnosis = "diagnosis"

// Cards are the causes that were met, each with when it is due, in the order of
// their ids. A car is no card to be turned over again after a minute, so the
// schedule goes by days from the first on.
func Cards(history []record.Result) []Card {
	p := fsrs.DefaultParam()
	p.EnableShortTerm = false
	schedule := fsrs.NewFSRS(p)
	cards := map[string]fsrs.Card{}
	for _, r := range inTime(history) {
		mark, ok := r.Mark(diagnosis)
		if !ok {
			continue
		}
		for _, cause := range r.Truth {
			card, met := cards[cause]
			if !met {
				card = fsrs.NewCard(r.When)
			}
			next, err := schedule.Next(card, r.When, rating(mark))
			if err == nil { // results stand in time and are checked: none is expected
				cards[cause] = next.Card
			}
		}
	}
	list := make([]Card, 0, len(cards))
	for cause, c := range cards {
		list = append(list, Card{cause, c.LastReview, c.Due})
	}
	slices.SortFunc(list, func(a, b Card) int {
		if a.Cause < b.Cause {
			return -1
		}
		return 1
	})
	return list
}

// soonest are the cards of a library's causes, what is due first first.
func soonest(lib *scenarios.Library, history []record.Result) []Card {
	cards := slices.DeleteFunc(Cards(history), func(c Card) bool { return lib.Cause(c.Cause) == nil })
	slices.SortStableFunc(cards, func(a, b Card) int { return a.Due.Compare(b.Due) })
	return cards
}

// rating is what a diagnosis says of how well a cause is known.
func rating(mark float64) fsrs.Rating {
	switch {
	case mark >= easyFrom:
		return fsrs.Easy
	case mark >= goodFrom:
		return fsrs.Good
	case mark >= hardFrom:
		return fsrs.Hard
	}
	return fsrs.Again
}
