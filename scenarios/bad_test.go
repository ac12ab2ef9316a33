package scenarios

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// soundJob is a job without a mistake; the table below makes one at a time.
const soundJob = `title: A warm wheel
car: compact_hatchback
complaint: The left one was hot.
notices:
  - hotter: front_left
facts:
  - pads_km: Renewed {pads_km} km ago.
driven: {clock_km: 68000, pads_km: 17000, room_c: 17}
faults:
  - cause: pins_dry
    place: front_left
    severity: heavy
    since_km: 7000
minutes_min: 75
difficulty_bits: 5
goal: Look outside first.
`

// with is our library, of its jobs one, with one file in the place of, or beside, ours.
func with(t testing.TB, name, text string) fs.FS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(embedded, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(path, "jobs/") && path != "jobs/warm_wheel.yaml" {
			return err // one job is enough to see what a change of a cause or car breaks
		}
		data, err := embedded.ReadFile(path)
		files[path] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	files[name] = &fstest.MapFile{Data: []byte(text)}
	return files
}

// TestBadJobs: each mistake has its sentence, where it stands and what is allowed.
func TestBadJobs(t *testing.T) {
	if _, err := Load(with(t, "jobs/x.yaml", soundJob)); err != nil {
		t.Fatalf("the sound job: %v", err)
	}
	rows := []struct {
		name, old, new string
		want           []string
	}{
		{"unknown key", "goal: Look", "gaol: Look", []string{"jobs/x.yaml:1:1: goal: missing; text is needed here", "jobs/x.yaml:16:1: gaol: unknown key; the nearest known are goal, car, faults"}},
		{"duplicate key", "difficulty_bits: 5", "difficulty_bits: 5\ndifficulty_bits: 6", []string{"jobs/x.yaml:16:1: difficulty_bits: the key stands twice; once; it stands first in line 15"}},
		{"missing key", "minutes_min: 75\n", "", []string{"jobs/x.yaml:1:1: minutes_min: missing; a number from 5 to 600 min"}},
		{"missing unit", "since_km: 7000", "since: 7000", []string{"jobs/x.yaml:10:5: faults[0].since_km: missing; a number from 2000 to 15000 km", "jobs/x.yaml:13:5: faults[0].since: the key lacks its unit; write since_km"}},
		{"decimal comma", "difficulty_bits: 5", "difficulty_bits: 4,5", []string{"jobs/x.yaml:15:18: difficulty_bits: \"4,5\" has a decimal comma; write 4.5"}},
		{"not a number", "since_km: 7000", "since_km: lately", []string{"jobs/x.yaml:13:15: faults[0].since_km: \"lately\" is not a number; a number from 2000 to 15000 km"}},
		{"unit in the value", "since_km: 7000", "since_km: 7000 km", []string{"jobs/x.yaml:13:15: faults[0].since_km: \"7000 km\" is not a number; a number from 2000 to 15000 km; the unit stands in the key"}},
		{"number in quotes", "since_km: 7000", "since_km: \"7000\"", []string{"jobs/x.yaml:13:15: faults[0].since_km: \"7000\" is text; a number from 2000 to 15000 km without quotes"}},
		{"NaN", "since_km: 7000", "since_km: .nan", []string{"jobs/x.yaml:13:15: faults[0].since_km: \".nan\" is not a finite number; a number from 2000 to 15000 km"}},
		{"infinity", "minutes_min: 75", "minutes_min: -.inf", []string{"jobs/x.yaml:14:14: minutes_min: \"-.inf\" is not a finite number; a number from 5 to 600 min"}},
		{"spelt infinity", "minutes_min: 75", "minutes_min: Infinity", []string{"jobs/x.yaml:14:14: minutes_min: \"Infinity\" is not a finite number; a number from 5 to 600 min"}},
		{"hexadecimal", "minutes_min: 75", "minutes_min: 0x4B", []string{"jobs/x.yaml:14:14: minutes_min: \"0x4B\" is not a number; a number from 5 to 600 min; the unit stands in the key"}},
		{"negative", "minutes_min: 75", "minutes_min: -1", []string{"jobs/x.yaml:14:14: minutes_min: -1 is out of range; a number from 5 to 600 min"}},
		{"far out of range", "minutes_min: 75", "minutes_min: 1e9", []string{"jobs/x.yaml:14:14: minutes_min: 1e9 is out of range; a number from 5 to 600 min"}},
		{"too great for a number", "minutes_min: 75", "minutes_min: 1e999", []string{"jobs/x.yaml:14:14: minutes_min: 1e999 is out of range; a number from 5 to 600 min"}},
		{"no value", "minutes_min: 75", "minutes_min:", []string{"jobs/x.yaml:14:13: minutes_min: no value; a number from 5 to 600 min"}},
		{"list for a number", "minutes_min: 75", "minutes_min: [75]", []string{"jobs/x.yaml:14:14: minutes_min: a list stands where a number belongs; a number from 5 to 600 min"}},
		{"mapping for text", "goal: Look outside first.", "goal: {a: b}", []string{"jobs/x.yaml:16:7: goal: a mapping stands where text belongs; text"}},
		{"number for text", "goal: Look outside first.", "goal: 12", []string{"jobs/x.yaml:16:7: goal: \"12\" is not text; text; put it in quotes if it is meant as text"}},
		{"empty text", "goal: Look outside first.", "goal: \"\"", []string{"jobs/x.yaml:16:7: goal: the text is empty; at least one word"}},
		{"unknown car", "compact_hatchback", "compact_hatchbak", []string{"jobs/x.yaml:2:6: car: unknown car \"compact_hatchbak\"; known are compact_hatchback, delivery_van, small_four_wheel_drive"}},
		{"unknown cause", "cause: pins_dry", "cause: pin_dry", []string{"jobs/x.yaml:10:12: faults[0].cause: unknown cause \"pin_dry\"; the nearest known are pins_dry, pin_bent, pin_seized"}},
		{"unknown place", "place: front_left", "place: front_lift", []string{"jobs/x.yaml:11:12: faults[0].place: unknown place of pins_dry \"front_lift\"; known are front_left, front_right, rear_left, rear_right"}},
		{"place of another cause", "place: front_left", "place: car", []string{"jobs/x.yaml:11:12: faults[0].place: unknown place of pins_dry \"car\"; known are front_left, front_right, rear_left, rear_right"}},
		{"unknown severity", "severity: heavy", "severity: awful", []string{"jobs/x.yaml:12:15: faults[0].severity: unknown severity of pins_dry \"awful\"; known are slight, clear, heavy"}},
		{"healthy fault", "cause: pins_dry\n    place: front_left\n    severity: heavy\n    since_km: 7000", "cause: honestly_worn\n    since_km: 0", []string{"jobs/x.yaml:10:5: faults[0].cause: honestly_worn is no fault; leave the list of faults out"}},
		{"before the pads", "pads_km: 17000", "pads_km: 6500", []string{"jobs/x.yaml:13:15: faults[0].since_km: 7000 is before the pads were fitted; at most driven.pads_km, 6500 km"}},
		{"pads older than the car", "clock_km: 68000", "clock_km: 16000", []string{"jobs/x.yaml:8:36: driven.pads_km: 17000 is more than the car has run; at most driven.clock_km, 16000 km"}},
		{"unlikely and untold", "facts:\n  - pads_km: Renewed {pads_km} km ago.\ndriven: {clock_km: 68000, pads_km: 17000", "driven: {clock_km: 68000, pads_km: 60000", []string{"jobs/x.yaml:6:9: driven.pads_km: 60000 is too unusual to be left untold; 500 to 36000, or a fact that tells it"}},
		{"anchor", "goal: Look", "goal: &g Look", []string{"jobs/x.yaml:16:7: an anchor (&g); write values out where they belong"}},
		{"alias", "goal: Look outside first.", "goal: *g", []string{"jobs/x.yaml:16:7: not YAML: unknown anchor 'g' referenced; keys and values as in the files of the library, indented with spaces"}},
		{"anchor and alias", "minutes_min: 75\n", "minutes_min: &m 75\nnote: *m\n", []string{"jobs/x.yaml:14:14: an anchor (&m); write values out where they belong", "jobs/x.yaml:15:7: an alias (*m); write the value out"}},
		{"merge key", "difficulty_bits: 5", "<<: {difficulty_bits: 5}", []string{"jobs/x.yaml:15:1: a merge key (<<); write the keys out"}},
		{"tag", "goal: Look", "goal: !!str Look", []string{"jobs/x.yaml:16:7: a tag (!!str); plain values without tags"}},
		{"second document", "goal: Look outside first.\n", "goal: Look outside first.\n---\ntitle: b\n", []string{"jobs/x.yaml:17:1: a second document; one document a file, so no further line ---"}},
		{"unknown notice", "- hotter: front_left", "- colder: front_left", []string{"jobs/x.yaml:5:5: notices[0].colder: unknown notice; known are pull, hotter, pedal, lamp, scrapes, wet, rolls, washer, none"}},
		{"unknown value of a notice", "- hotter: front_left", "- hotter: front_lef", []string{"jobs/x.yaml:5:13: notices[0].hotter: unknown value of hotter \"front_lef\"; known are front_left, front_right, rear_left, rear_right"}},
		{"two keys in one notice", "- hotter: front_left", "- {hotter: front_left, pull: left}", []string{"jobs/x.yaml:5:5: notices[0]: 2 keys stand in one notice; one: pull, hotter, pedal, lamp, scrapes, wet, rolls, washer, none"}},
		{"none beside another", "- hotter: front_left", "- hotter: front_left\n  - none: service", []string{"jobs/x.yaml:6:11: notices[1].none: who notices something does not notice nothing; none alone, or the others without it"}},
		{"notice twice", "- hotter: front_left", "- hotter: front_left\n  - hotter: front_left", []string{"jobs/x.yaml:6:13: notices[1].hotter: the notice stands twice; once"}},
		{"no notices", "notices:\n  - hotter: front_left", "notices: []", []string{"jobs/x.yaml:4:10: notices: the list is empty; at least one item"}},
		{"undeclared claim", "The left one was hot.", "The left one was hot and the pedal sinks.", []string{"jobs/x.yaml:3:12: complaint: the word \"pedal\" speaks of something that notices does not list; list pedal under notices, or leave it out", "jobs/x.yaml:3:12: complaint: the word \"sinks\" speaks of something that notices does not list; list pedal under notices, or leave it out"}},
		{"a claim nothing computes", "The left one was hot.", "The left one was hot and rattles.", []string{"jobs/x.yaml:3:12: complaint: the word \"rattles\" speaks of something that notices does not list; list something that is computed under notices, or leave it out"}},
		{"a symptom stated", "driven: {", "reading_mm: 3\ndriven: {", []string{"jobs/x.yaml:8:1: reading_mm: unknown key; the nearest known are minutes_min, complaint, driven"}},
		{"fact without its figure", "Renewed {pads_km} km ago.", "Renewed lately.", []string{"jobs/x.yaml:7:14: facts[0].pads_km: the figure is missing; write {pads_km} where it stands in the sentence"}},
		{"fact with a figure of its own", "Renewed {pads_km} km ago.", "Renewed {pads_km} km ago in 2019.", []string{"jobs/x.yaml:7:14: facts[0].pads_km: a digit stands in the sentence; write {pads_km} for the figure; it is taken from driven"}},
		{"fact with a strange placeholder", "Renewed {pads_km} km ago.", "Renewed {pads_km} km ago at {clock_km}.", []string{"jobs/x.yaml:7:14: facts[0].pads_km: unknown placeholder {clock_km}; {pads_km}"}},
		{"list where keys belong", "driven: {clock_km: 68000, pads_km: 17000, room_c: 17}", "driven: [68000]", []string{"jobs/x.yaml:8:9: driven: a list stands where keys with values belong; keys with values"}},
		{"neither yes nor no", "room_c: 17}", "room_c: 17, stood_overnight: perhaps}", []string{"jobs/x.yaml:8:72: driven.stood_overnight: \"perhaps\" is neither yes nor no; yes or no"}},
		{"keys where a list belongs", "facts:\n  - pads_km: Renewed", "facts:\n  pads_km: Renewed", []string{"jobs/x.yaml:7:3: facts: a mapping stands where a list belongs; a list, each item after a dash"}},
		{"tab", "  - cause: pins_dry", "\t- cause: pins_dry", []string{"jobs/x.yaml:10:1: not YAML: found character that cannot start any token; keys and values as in the files of the library, indented with spaces"}},
		{"not YAML", "goal: Look outside first.", "goal: [Look", []string{"jobs/x.yaml:16:1: not YAML: did not find expected ',' or ']'; keys and values as in the files of the library, indented with spaces"}},
		{"nested too deep", "goal: Look outside first.", "goal: [[[[[[[[[[[[a]]]]]]]]]]]]", []string{"jobs/x.yaml:16:18: nested too deep; at most 12 levels"}},
		{"empty file", "", "", []string{"jobs/x.yaml:1:1: the file is empty; write keys with their values"}},
		{"comment only", "", "# nothing\n", []string{"jobs/x.yaml:1:1: the file is empty; write keys with their values"}},
		{"not UTF-8", "", "title: a\ngoal: \xff\n", []string{"jobs/x.yaml:2:7: a byte that is not UTF-8; save the file as UTF-8 text"}},
		{"three mistakes at once", "minutes_min: 75\ndifficulty_bits: 5\ngoal: Look outside first.", "minutes_min: 7,5\ndifficulty_bits: many\ngaol: x", []string{"jobs/x.yaml:1:1: goal: missing; text is needed here", "jobs/x.yaml:14:14: minutes_min: \"7,5\" has a decimal comma; write 7.5", "jobs/x.yaml:15:18: difficulty_bits: \"many\" is not a number; a number from 0 to 20 bits", "jobs/x.yaml:16:1: gaol: unknown key; the nearest known are goal, car, faults"}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			text := row.new
			if row.old != "" {
				if !strings.Contains(soundJob, row.old) {
					t.Fatalf("the sound job does not hold %q", row.old)
				}
				text = strings.Replace(soundJob, row.old, row.new, 1)
			}
			lib, err := Load(with(t, "jobs/x.yaml", text))
			if lib != nil {
				t.Error("a library was loaded in part")
			}
			sameSentences(t, err, row.want)
		})
	}
}

func sameSentences(t *testing.T, err error, want []string) {
	t.Helper()
	var probs Problems
	if !errors.As(err, &probs) {
		t.Fatalf("got %v, want problems", err)
	}
	var got []string
	for _, p := range probs {
		got = append(got, p.Error())
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n\t%s\nwant\n\t%s", strings.Join(got, "\n\t"), strings.Join(want, "\n\t"))
	}
}

// TestBadOthers: mistakes in the files a job stands on.
func TestBadOthers(t *testing.T) {
	rows := []struct{ name, file, old, new, want string }{
		{"missing unit in a car", "cars/compact_hatchback.yaml", "wheelbase_m: 2.55", "wheelbase: 2.55", "cars/compact_hatchback.yaml:3:1: wheelbase_m: missing; a number from 1.5 to 5 m\ncars/compact_hatchback.yaml:5:1: wheelbase: the key lacks its unit; write wheelbase_m"},
		{"vessel whose MIN is below its bottom", "cars/compact_hatchback.yaml", "  min_to_max_cm3: 300", "  min_to_max_cm3: 800", "cars/compact_hatchback.yaml:165:19: coolant.min_to_max_cm3: 800 cm³: MIN lies below an empty vessel; at most coolant.at_max_cm3, 750 cm³"},
		{"unknown number of a corner", "cars/compact_hatchback.yaml", "  bridge_rate_kn_per_mm: 120", "  brigde_rate_kn_per_mm: 120", "cars/compact_hatchback.yaml:67:3: front.bridge_rate_kn_per_mm: missing; a number from 1 to 5000 kN/mm\ncars/compact_hatchback.yaml:70:3: front.brigde_rate_kn_per_mm: unknown key; the nearest known are bridge_rate_kn_per_mm, pad_rate_kn_per_mm, pin_rate_kn_per_mm"},
		{"decimal comma in a car", "cars/compact_hatchback.yaml", "tyre_radius_m: 0.300", "tyre_radius_m: 0,300", "cars/compact_hatchback.yaml:9:16: tyre_radius_m: \"0,300\" has a decimal comma; write 0.300"},
		{"out of range in a car", "cars/compact_hatchback.yaml", "mass_kg: 1350", "mass_kg: 135", "cars/compact_hatchback.yaml:4:10: mass_kg: 135 is out of range; a number from 500 to 5000 kg"},
		{"yes or no in a car", "cars/compact_hatchback.yaml", "anti_lock: no", "anti_lock: maybe", "cars/compact_hatchback.yaml:15:12: anti_lock: \"maybe\" is neither yes nor no; yes or no"},
		{"wheel served twice", "cars/compact_hatchback.yaml", "secondary: [front_right, rear_left]", "secondary: [front_right, rear_right, rear_left]", "cars/compact_hatchback.yaml:18:28: circuits.secondary[1]: rear_right is served twice; once; it stands first in line 17"},
		{"wheel served by none", "cars/compact_hatchback.yaml", "secondary: [front_right, rear_left]", "secondary: [front_right]", "cars/compact_hatchback.yaml:17:3: circuits: rear_left is served by no circuit; each of the four wheels once"},
		{"numbers that do not fit", "cars/compact_hatchback.yaml", "disc_minimum_mm: 20", "disc_minimum_mm: 23", "cars/compact_hatchback.yaml:90:20: front.disc_minimum_mm: 23 mm: the disc is below its minimum when new; at most front.disc_thickness_mm, 22 mm"},
		{"radius outside the disc", "cars/compact_hatchback.yaml", "effective_radius_mm: 104", "effective_radius_mm: 140", "cars/compact_hatchback.yaml:96:24: front.effective_radius_mm: 140 mm: the pad stands outside the disc; less than half of front.disc_diameter_mm, 128 mm"},
		{"piston larger than the disc has room for", "cars/compact_hatchback.yaml", "piston_diameter_mm: 54", "piston_diameter_mm: 540", "cars/compact_hatchback.yaml:67:23: front.piston_diameter_mm: 540 is out of range; a number from 10 to 120 mm"},
		{"no bore", "cars/compact_hatchback.yaml", "bore_mm: 20.64", "bore_mm: 0", "cars/compact_hatchback.yaml:31:12: master.bore_mm: 0 is out of range; a number from 8 to 50 mm"},
		{"gap below nothing", "cars/compact_hatchback.yaml", "outer_gap_mm: 0.12", "outer_gap_mm: -0.12", "cars/compact_hatchback.yaml:83:17: front.outer_gap_mm: -0.12 is out of range; a number from 0 to 3 mm"},
		{"top heavy", "cars/compact_hatchback.yaml", "centre_height_m: 0.54", "centre_height_m: 1.2", "cars/compact_hatchback.yaml:6:18: centre_height_m: 1.2 m: the car tips over its front wheels in a hard stop; less than wheelbase_m, front_load_share and peak_adhesion_ratio allow, 1.07368 m"},
		{"tongue longer than the lining", "cars/compact_hatchback.yaml", "lining_new_mm: 11\n", "lining_new_mm: 2\n", "cars/compact_hatchback.yaml:98:14: front.tongue_mm: 2 mm: the tongue touches the disc when the pad is new; less than front.lining_new_mm, 2 mm"},
		{"lining larger than its track", "cars/compact_hatchback.yaml", "effective_radius_mm: 104", "effective_radius_mm: 126", "cars/compact_hatchback.yaml:99:20: front.lining_area_cm2: 45 cm²: the lining is larger than the face it rubs; less than the ring that front.disc_diameter_mm and front.effective_radius_mm leave, 31.6673 cm²"},
		{"a symptom in a cause", "causes/pins_dry.yaml", "add: {wheel.pin_friction_n: 120}", "add: {wheel.temperature_c: 120}", "causes/pins_dry.yaml:17:11: severities[0].add.wheel.temperature_c: unknown path \"wheel.temperature_c\"; the nearest known are wheel.plate_proud_mm, wheel.hose_return_ratio, wheel.ear_friction_n; a path of the condition"},
		{"a car's number in a cause", "causes/pins_dry.yaml", "add: {wheel.pin_friction_n: 120}", "add: {front.pin_friction_n: 120}", "causes/pins_dry.yaml:17:11: severities[0].add.front.pin_friction_n: this is a number of the car when new; a path of the condition, such as wheel.air_cm3"},
		{"unknown group", "causes/pins_dry.yaml", "group: guide_pins", "group: guide_pin", "causes/pins_dry.yaml:2:8: group: unknown group \"guide_pin\"; the nearest known are guide_pins, disc, pads"},
		{"unknown place in a cause", "causes/pins_dry.yaml", "[front_left, front_right,", "[front_left, front_middle,", "causes/pins_dry.yaml:10:22: places[1]: unknown place \"front_middle\"; the nearest known are front_axle, front_left, front_right"},
		{"name of the car where it is not the place", "causes/pins_dry.yaml", "since_km:", "where: pins\nsince_km:", "causes/pins_dry.yaml:11:8: where: other places than the car have names of their own; leave where out, or write places: [car]"},
		{"place twice", "causes/pins_dry.yaml", "[front_left, front_right,", "[front_left, front_left,", "causes/pins_dry.yaml:10:22: places[1]: front_left stands twice; once"},
		{"severity twice", "causes/pins_dry.yaml", "id: clear", "id: slight", "causes/pins_dry.yaml:18:5: severities[1].id: \"slight\" stands twice; once"},
		{"range the wrong way", "causes/pins_dry.yaml", "{from: 2000, to: 15000}", "{from: 20000, to: 15000}", "causes/pins_dry.yaml:11:11: since_km: from is greater than to; from at most to\njobs/warm_wheel.yaml:14:69: faults[0].since_km: 7000 is out of range; a number from 20000 to 15000 km"},
		{"negative change", "causes/pins_dry.yaml", "wheel.pin_friction_n: 120", "wheel.pin_friction_n: -120", "causes/pins_dry.yaml:17:33: severities[0].add.wheel.pin_friction_n: -120 is out of range; a number from 0 to 50000 N"},
		{"unknown check in a note", "causes/pins_dry.yaml", "notes: [temperature@here,", "notes: [temperatur@here,", "causes/pins_dry.yaml:26:9: notes[0]: \"temperatur@here\": no check has this name; a check, at a wheel with @here, @beside or its name"},
		{"a note without its wheel", "causes/pins_dry.yaml", "notes: [temperature@here,", "notes: [temperature,", "causes/pins_dry.yaml:26:9: notes[0]: \"temperature\": this is done at a wheel; add @front_left, @front_right, @rear_left or @rear_right; a check, at a wheel with @here, @beside or its name"},
		{"unknown person", "remedies/renew_joint.yaml", "who: licensed_unless_trained", "who: anybody", "remedies/renew_joint.yaml:6:6: who: unknown person \"anybody\"; known are owner, licensed_unless_trained, licensed, no_work"},
		{"unknown part", "remedies/renew_joint.yaml", "part: lines", "part: line", "remedies/renew_joint.yaml:2:7: part: unknown part \"line\"; known are pins, caliper, pads, disc, lines, fluid, bonnet, whole"},
		{"not yes or no", "remedies/renew_joint.yaml", "renews: yes", "renews: often", "remedies/renew_joint.yaml:7:9: renews: \"often\" is neither yes nor no; yes or no"},
		{"unknown mark", "remedies/renew_joint.yaml", "pour_to: max", "pour_to: brim", "remedies/renew_joint.yaml:13:10: pour_to: unknown mark \"brim\"; known is max"},
		{"group twice", "catalogue.yaml", "{id: hub, name: Hub}", "{id: pads, name: Hub}", "catalogue.yaml:10:5: groups[6].id: \"pads\" stands twice; once\ncauses/hub_loose.yaml:2:8: group: unknown group \"hub\"; the nearest known are pads, disc, pads"},
		{"what is left of what does not wear", "causes/pads_worn_front.yaml", "{wheel.lining_left_mm: 1.3}", "{wheel.lining_loss_mm: 1.3}", "causes/pads_worn_front.yaml:17:24: severities[1].at_end.at_most.wheel.lining_loss_mm: unknown path \"wheel.lining_loss_mm\"; the nearest known are wheel.lining_left_mm, rear_wheels.lining_left_mm, front_wheels.lining_left_mm; what is left of a part that wears"},
		{"more left than there can be", "causes/pads_worn_front.yaml", "{wheel.lining_left_mm: 1.3}", "{wheel.lining_left_mm: 130}", "causes/pads_worn_front.yaml:17:46: severities[1].at_end.at_most.wheel.lining_left_mm: 130 is out of range; a number from 0 to 25 mm"},
		{"unknown number of a circuit", "causes/port_covered.yaml", "circuit.play_lost_mm", "circuit.stroke_mm", "causes/port_covered.yaml:13:11: severities[0].add.circuit.stroke_mm: unknown path \"circuit.stroke_mm\"; the nearest known are circuit.air_cm3, circuit.play_lost_mm, circuit.bypass_cm3_per_s_mpa; a path of the condition"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			data, err := embedded.ReadFile(row.file)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(string(data), row.old) {
				t.Fatalf("%s does not hold %q", row.file, row.old)
			}
			_, err = Load(with(t, row.file, strings.Replace(string(data), row.old, row.new, 1)))
			sameSentences(t, err, strings.Split(row.want, "\n"))
		})
	}
}

func TestBadNames(t *testing.T) {
	for name, want := range map[string]string{
		"jobs/x.yml":       "jobs/x.yml: the name ends in .yml; name it x.yaml",
		"jobs/My Job.yaml": "jobs/My Job.yaml: the file's name is the id and cannot be used as one; a small letter, then at most 39 small letters, digits and underscores, then .yaml",
	} {
		_, err := Load(with(t, name, soundJob))
		sameSentences(t, err, []string{want})
	}
	_, err := Load(fstest.MapFS{})
	sameSentences(t, err, []string{"catalogue.yaml: the file is missing; it lists the groups of causes and the parts",
		"owners.yaml: the file is missing; it holds the sentences of the owners of drawn cars",
		"pairs.yaml: the file is missing; it tells which two causes a car may have at once"})
}

func TestOverlay(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "jobs"), 0o755); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "jobs", "mine.yaml")
	if err := os.WriteFile(file, []byte(soundJob), 0o644); err != nil {
		t.Fatal(err)
	}
	lib, err := Overlay(dir)
	if err != nil {
		t.Fatal(err)
	}
	if lib.Job("mine") == nil || lib.Job("warm_wheel") == nil {
		t.Error("the overlay's job or ours is missing")
	}
	if err := os.WriteFile(file, []byte(strings.Replace(soundJob, "place: front_left", "place: front", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	_, err = Overlay(dir)
	if err == nil || !strings.HasPrefix(err.Error(), file+":11:12: faults[0].place: unknown place of pins_dry \"front\"; known are front_left") {
		t.Errorf("got %v", err)
	}
	for _, missing := range []string{filepath.Join(dir, "nowhere"), file} {
		if _, err := Overlay(missing); err == nil || !strings.HasPrefix(err.Error(), missing+": ") {
			t.Errorf("overlay of %s: %v", missing, err)
		}
	}
}
