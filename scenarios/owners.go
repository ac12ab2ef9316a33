package scenarios

import (
	"math/rand/v2"
	"slices"
	"strings"
)

// Owners is how the owners of drawn cars speak: sentences by what they tell of.
type Owners struct {
	where         map[string]string // a wheel in an owner's words
	opens, closes []string
	says          map[string][]string // by claim, "pull.left", or by its kind where the wheel is filled in, "hotter"
	facts         map[string][]string // by background, "pads_km"; how the car is driven by degree, "harshness_ratio.low"
	titles        map[string][]string // by kind of claim
	notes         []string            // with which somebody's notes are handed over
	noteTitles    []string
}

// factKinds is every fact there are sentences for.
var factKinds = []string{"clock_km", "pads_km", "pads_thinner_mm", "room_c", "harshness_ratio.low", "harshness_ratio.ordinary", "harshness_ratio.high"}

// sayKinds is every claim there are sentences for.
func sayKinds() []string {
	var out []string
	for _, k := range claimKinds {
		if slices.Equal(k.values, wheelNames) {
			out = append(out, k.id)
			continue
		}
		for _, v := range k.values {
			out = append(out, k.id+"."+v)
		}
	}
	return out
}

// owners reads the sentences. They may speak of nothing but the claim they
// stand under.
func (b *builder) owners(src *source) {
	if src.node == nil {
		return
	}
	r := src.r
	w := &Owners{where: map[string]string{}, says: map[string][]string{}, facts: map[string][]string{}, titles: map[string][]string{}}
	b.lib.owners = w
	o := r.object(src.node, "")
	if n := o.need("where", "each of the four wheels in an owner's words"); n != nil {
		k := r.object(n, "where")
		for _, name := range wheelNames {
			w.where[name] = k.text(name)
		}
		k.close()
	}
	w.opens = sentences(o, "opens", nil)
	w.closes = sentences(o, "closes", nil)
	part := func(name string, kinds []string, into map[string][]string, claims func(kind string) []Claim) {
		n := o.need(name, "sentences")
		if n == nil {
			return
		}
		p := r.object(n, name)
		for _, kind := range kinds {
			into[kind] = sentences(p, kind, claims(kind))
		}
		p.close()
	}
	part("says", sayKinds(), w.says, func(kind string) []Claim {
		id, _, _ := strings.Cut(kind, ".")
		return []Claim{{ID: id}}
	})
	part("facts", factKinds, w.facts, func(string) []Claim { return nil })
	part("titles", ClaimIDs(), w.titles, func(kind string) []Claim { return []Claim{{ID: kind}} })
	w.notes, w.noteTitles = sentences(o, "notes", nil), sentences(o, "note_titles", nil)
	o.close()
}

// sentences reads a list of them and refuses words that speak of something else
// than claims.
func sentences(o *object, key string, claims []Claim) []string {
	var out []string
	for _, it := range o.list(key, true) {
		s, ok := o.r.text(it.node, it.path)
		if !ok {
			continue
		}
		for _, w := range undeclared(s, claims) {
			o.r.fail(it.node, it.path, "the word \""+w.word+"\" speaks of something else than "+key, "leave it out, or put the sentence under "+w.claim)
		}
		out = append(out, s)
	}
	return out
}

// complain puts an owner's story together from what they noticed.
func (w *Owners) complain(claims []Claim, rng *rand.Rand) string {
	var story []string
	if rng.IntN(3) > 0 {
		story = append(story, pick(w.opens, rng))
	}
	for _, c := range claims {
		kind := c.ID
		if _, ok := w.says[kind]; !ok {
			kind += "." + c.Value
		}
		story = append(story, strings.ReplaceAll(pick(w.says[kind], rng), "{where}", w.where[c.Value]))
	}
	if rng.IntN(2) > 0 {
		story = append(story, pick(w.closes, rng))
	}
	return strings.Join(story, " ")
}

// tell is one fact as a sentence.
func (w *Owners) tell(d *Driven, id string, rng *rand.Rand) Fact {
	kind := id
	if id == "harshness_ratio" {
		switch {
		case d.Harshness < 0.9:
			kind += ".low"
		case d.Harshness > 1.1:
			kind += ".high"
		default:
			kind += ".ordinary"
		}
	}
	return Fact{ID: id, Text: strings.ReplaceAll(pick(w.facts[kind], rng), "{"+id+"}", d.figure(id))}
}

func pick(list []string, rng *rand.Rand) string { return list[rng.IntN(len(list))] }
