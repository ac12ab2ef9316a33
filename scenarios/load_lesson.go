package scenarios

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"

	"evenwear/physics"
)

const (
	mostPress  = 500.0   // [N] the heaviest foot of UN R13-H for passenger cars
	mostLesson = 60000.0 // [km] a step may drive
	lastOrder  = 1000.0  // where a lesson stands that does not say where
)

// lesson reads one walk on the bench.
func (b *builder) lesson(src *source) {
	l := &Lesson{ID: src.id}
	b.lib.Lessons = append(b.lib.Lessons, l)
	if src.node == nil {
		return
	}
	o := src.r.object(src.node, "")
	l.Order = o.numberOr("order", "", 1, lastOrder, lastOrder)
	l.Title, l.About = o.text("title"), o.text("about")
	if i := o.name("car", "car", ids(b.lib.Cars, func(c *Car) string { return c.ID })); i >= 0 {
		l.Car = b.lib.Cars[i]
	}
	if i := o.name("wheel", "wheel", wheelNames); i >= 0 {
		l.Wheel = physics.Wheel(i)
	}
	for _, it := range o.list("steps", true) {
		l.Steps = append(l.Steps, step(src.r, it, Place(l.Wheel.String())))
	}
	l.End = o.textOr("end")
	o.close()
}

func step(r *reader, it item, at Place) LessonStep {
	o := r.object(it.node, it.path)
	defer o.close()
	s := LessonStep{Tell: o.text("tell"), Vacuum: true}
	if n := o.get("fresh"); n != nil {
		s.Fresh, _ = r.yes(n, o.at("fresh"))
	}
	s.Set = changes(o, []Place{at})
	s.DriveKm = o.numberOr("drive_km", "km", 0, mostLesson, 0)
	if n := o.get("vacuum"); n != nil {
		s.Vacuum, _ = r.yes(n, o.at("vacuum"))
	}
	for _, p := range o.list("press_n", false) {
		if v, ok := r.number(p.node, p.path, "N", 1, mostPress); ok {
			s.Press = append(s.Press, v)
		}
	}
	if n := o.get("release"); n != nil {
		s.Release, _ = r.yes(n, o.at("release"))
	}
	if n := o.need("ask", "what the learner says beforehand"); n != nil {
		s.Ask = question(r, n, o.at("ask"))
		if s.Ask.Kind == "curve" && len(s.Press) < 2 {
			r.fail(n, o.at("ask"), "a curve of "+fmt.Sprint(len(s.Press))+" points", "at least two forces under press_n")
		}
	}
	s.Look = o.text("look")
	return s
}

func question(r *reader, n *yaml.Node, path string) Question {
	o := r.object(n, path)
	defer o.close()
	var q Question
	if i := o.name("kind", "kind of question", QuestionKinds); i >= 0 {
		q.Kind = QuestionKinds[i]
	}
	names := make([]string, len(Quantities))
	for i := range Quantities {
		names[i] = Quantities[i].ID
	}
	of := 0
	if of = o.name("of", "quantity", names); of >= 0 {
		q.Of = names[of]
	}
	q.Text = o.text("text")
	list := o.get("choices")
	if list == nil || r.noted == nil && q.Kind != "choice" {
		switch {
		case q.Kind == "choice":
			o.need("choices", "two to five answers, each with from, where it begins; the first has none")
		case list != nil:
			r.fail(list, o.at("choices"), "choices of a question that is no choice", "leave them out, or write kind: choice")
		}
		return q
	}
	answers := r.list(list, o.at("choices"))
	for i, n := range answers {
		c := r.object(n, fmt.Sprintf("%s[%d]", o.at("choices"), i))
		q.Choices = append(q.Choices, c.text("say"))
		from := c.get("from")
		switch {
		case from == nil && i > 0:
			c.need("from", "the least figure this answer holds for")
		case from != nil && i == 0 && r.noted == nil:
			r.fail(from, c.at("from"), "the first answer begins nowhere", "leave from out")
		case from != nil && r.noted != nil: // a schema allows what any quantity allows
			for _, q := range Quantities {
				r.number(from, c.at("from"), q.Unit, q.Lo, q.Hi)
			}
		case from != nil && of >= 0:
			v, _ := r.number(from, c.at("from"), Quantities[of].Unit, Quantities[of].Lo, Quantities[of].Hi)
			q.Cuts = append(q.Cuts, v)
		}
		c.close()
	}
	if len(answers) < 2 || len(answers) > 5 {
		r.fail(list, o.at("choices"), fmt.Sprintf("%d answers", len(answers)), "two to five")
	}
	if !slices.IsSorted(q.Cuts) {
		r.fail(list, o.at("choices"), "the answers do not rise", "each from greater than the one before")
	}
	return q
}
