package scenarios

import (
	_ "embed"
	"errors"
	"fmt"
	"slices"
	"strings"
	"text/template"
)

//go:embed template/job.yaml
var jobTemplate string

// NewJob is a job to begin with: a file that loads, with comments that name
// everything this library allows.
func (l *Library) NewJob() (string, error) {
	const cause, car = "pins_dry", "compact_hatchback"
	if l.Cause(cause) == nil || l.Car(car) == nil {
		return "", errors.New("a new job needs the cause " + cause + " and the car " + car + " in the library")
	}
	var notices, causes []string
	for _, k := range claimKinds {
		notices = append(notices, k.id+": "+strings.Join(k.values, " | "))
	}
	for _, c := range l.Causes {
		if c.Healthy {
			continue
		}
		places, severities := make([]string, len(c.Places)), make([]string, len(c.Severities))
		for i, p := range c.Places {
			places[i] = string(p)
		}
		for i := range severities {
			severities[i] = c.Severities[i].ID
		}
		causes = append(causes, fmt.Sprintf("%s: %s; %s; %s to %s km", c.ID, strings.Join(places, " | "), strings.Join(severities, " | "), show(c.SinceKm[0]), show(c.SinceKm[1])))
	}
	var b strings.Builder
	err := template.Must(template.New("job").Parse(jobTemplate)).Execute(&b, map[string]any{
		"Cars": strings.Join(ids(l.Cars, func(c *Car) string { return c.ID }), ", "), "Car": car, "Cause": cause,
		"Notices": notices, "Causes": causes, "Facts": strings.Join(slices.Concat([]string{"clock_km"}, Backgrounds()), ", "),
	})
	return b.String(), err
}
