package scenarios

// NoWork is the person of a remedy at which nothing is worked on the car.
const NoWork = "no_work"

// Whos is who can do a remedy. Whether it is right to be done says [Remedy.Harmful].
var Whos = []string{"owner", "licensed_unless_trained", "licensed", NoWork}

// Rules is the harmful acts a remedy can be.
var Rules = []string{"petroleum_grease", "wrong_fluid", "forced_piston", "one_side_only"}

// remedy reads one thing that can be done.
func (b *builder) remedy(src *source) {
	m := &Remedy{ID: src.id}
	b.lib.Remedies = append(b.lib.Remedies, m)
	if src.node == nil {
		return
	}
	o := src.r.object(src.node, "")
	m.Name = o.text("name")
	parts := make([]string, len(b.lib.Parts))
	for i, p := range b.lib.Parts {
		parts[i] = p.ID
	}
	if i := o.name("part", "part", parts); i >= 0 {
		m.Part = parts[i]
	}
	m.Places, m.Where = places(o)
	m.Minutes = o.number("work_min", "min", 0, 600)
	m.PartsCost = o.number("parts_min", "min", 0, 600)
	if i := o.name("who", "person", Whos); i >= 0 {
		m.Who = Whos[i]
	}
	for _, it := range o.list("cautions", false) {
		if s, ok := src.r.text(it.node, it.path); ok {
			m.Cautions = append(m.Cautions, s)
		}
	}
	if n := o.get("harmful"); n != nil {
		if i, ok := src.r.name(n, o.at("harmful"), "rule", Rules); ok {
			m.Harmful = Rules[i]
		}
	}
	if n := o.get("refers"); n != nil {
		m.Refers, _ = src.r.yes(n, "refers")
	}
	if n := o.get("renews"); n != nil {
		m.Renews, _ = src.r.yes(n, "renews")
	}
	m.Changes = changes(o, m.Places)
	o.close()
}
