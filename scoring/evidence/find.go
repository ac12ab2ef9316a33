package evidence

import "evenwear/physics/inspect"

func (p *Problem) find(id inspect.ID) (*inspect.Check, bool) {
	if p.Find != nil {
		return p.Find(id)
	}
	return nil, false
}
