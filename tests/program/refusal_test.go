package program

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestRefusals: a mistake on the command line is a sentence and a failure, and
// nothing is written to the output that could be taken for an answer.
func TestRefusals(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "mine")
	if err := os.MkdirAll(filepath.Join(bad, "jobs"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(bad, "jobs", "mine.yaml"), []byte("title: [\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	misspelt := t.TempDir()
	if err := os.Mkdir(filepath.Join(misspelt, "job"), 0o755); err != nil {
		t.Fatal(err)
	}
	const pedal = "allowed are numbers from 0 to 2000 N"
	const pressure = "allowed are numbers from 0 to 30 MPa"
	for _, r := range []struct {
		args string // with blanks between
		want []string
	}{
		{"trace -pedal NaN", []string{"value 1: NaN", pedal}},
		{"trace -pedal 0,Inf", []string{"value 2: Inf", pedal}},
		{"trace -pedal -1", []string{"value 1: -1", pedal}},
		{"trace -pedal 1e9", []string{"value 1: 1e9", pedal}},
		{"trace -pressure NaN", []string{"value 1: NaN", pressure}},
		{"trace -pressure 1,+Inf", []string{"value 2: +Inf", pressure}},
		{"trace -pressure=-1", []string{"value 1: -1", pressure}},
		{"trace -pressure 1e9", []string{"value 1: 1e9", pressure}},
		{"trace -pressure 1 -set wheel.front_left.pin_frction_n=90", []string{`unknown path "wheel.front_left.pin_frction_n"`, "the nearest known are wheel.front_left.pin_friction_n, "}},
		{"trace -pressure 1 -set wheel.front_left.pin_friction_n=NaN", []string{"NaN is out of range; allowed is 0 to 50000 N"}},
		{"trace -pressure 1 -set wheel.front_left.pin_friction_n=-1", []string{"-1 is out of range"}},
		{"trace -pressure 1 -set wheel.front_left.pin_friction_n=1e9", []string{"1e+09 is out of range"}},
		{"trace -pressure 1 -wheel spare", []string{`unknown wheel "spare"; known are front_left`}},
		{"trace -pressure 1 -car coach", []string{`unknown car "coach"; the nearest known are compact_hatchback`}},
		{"trace -presure 1", []string{"-presure; known are -car"}},
		{"trace", []string{"give either -pressure or -pedal"}},
		{"--folder " + bad + " trace -pressure 1", []string{"mine.yaml:", "not YAML"}},
		{"term warm_weel", []string{`"warm_weel": there is no such job; the nearest known are warm_wheel, `}},
		{"term --bench --car coach", []string{`unknown car "coach"`}},
		{"term warm_wheel --width 19", []string{"--width 19: a line has 20 to 500 characters"}},
		{"term warm_wheel --width=-3", []string{"--width -3: a line has 20 to 500 characters"}},
		{"term warm_wheel --width wide", []string{"--width", `"wide"`}},
		{"term warm_wheel --seed -1", []string{"--seed", `"-1"`}},
		{"term warm_wheel --seeds 1", []string{"unknown flag --seeds"}},
		{"term --resume nothing", []string{"nothing.session: there is no such session"}},
		{"term --resume ../../etc/passwd", []string{"passwd.session: there is no such session"}},
		{"term --car coach", []string{`unknown car "coach"; the nearest known are compact_hatchback`}},
		{"window --car coach", []string{`unknown car "coach"; the nearest known are compact_hatchback`}},
		{"term warm_wheel --sessions " + file, []string{file + ": sessions cannot be kept there (not a directory)", "--sessions DIR"}},
		{"window --sessions " + file, []string{file + ": sessions cannot be kept there (not a directory)", "--sessions DIR"}},
		{"list --sessions " + file, []string{file + ": sessions cannot be kept there", "--sessions DIR"}},
		{"records --sessions " + file, []string{file + ": sessions cannot be kept there", "--sessions DIR"}},
		{"term practise --sessions " + file, []string{file + ": sessions cannot be kept there", "--sessions DIR"}},
		{"term selfcheck --sessions " + file, []string{file + ": sessions cannot be kept there", "--sessions DIR"}},
		{"forget nothing", []string{"nothing.session: there is no such session"}},
		{"forget", []string{"forget what? name a session, as list shows it"}},
		{"own lining_outer=4", []string{`"lining_outer": no check has this name; the nearest known are`}},
		{"own --clock 9 reservoir_level=40", []string{"--clock 9: 100 to 500000 km"}},
		{"schema jobs", []string{`there is no schema for "jobs"; known are job, cause`}},
		{"new job mine.yaml", []string{"a job stands in a folder named jobs and ends in .yaml: FOLDER/jobs/NAME.yaml"}},
		{"play " + bad + "/jobs/none.yaml", []string{"mine.yaml:", "not YAML"}},
		{"term --lesson nothing", []string{`"nothing": there is no such lesson; there are `}},
		{"check " + filepath.Join(bad, "nowhere"), []string{"there is no such folder"}},
		{"check " + file, []string{"a file stands where a folder belongs"}},
		{"check " + bad, []string{"mine.yaml:", "not YAML"}},
		{"check " + misspelt, []string{"job: this folder is not read; known are catalogue.yaml, owners.yaml, pairs.yaml, cars, causes, remedies, jobs, lessons"}},
		{"--folder " + bad + " list", []string{"mine.yaml:", "not YAML"}},
		{"bogus", []string{"unexpected argument bogus"}},
		{"--bogus", []string{"unknown flag --bogus"}},
	} {
		t.Run(r.args, func(t *testing.T) {
			t.Parallel()
			e := typedIn(t, "", strings.Fields(r.args)...)
			failed(t, e, r.want...)
			if e.out != "" && !strings.HasPrefix(e.out, "Usage: game ") {
				t.Errorf("written to the output: %.100q", e.out)
			}
		})
	}
}

// TestTraceAnswers: the same program with nothing wrong answers, so that the
// refusals above are not its only answer.
func TestTraceAnswers(t *testing.T) {
	e := typedIn(t, "", "trace", "-pressure", "0,8", "-set", "wheel.front_left.pin_friction_n=90")
	if e.code != 0 || e.errs != "" || strings.Count(e.out, "\n") != 3 || !strings.HasPrefix(e.out, "pressure_mpa,inner_n,") {
		t.Errorf("exit %d, said %q, wrote\n%s", e.code, e.errs, e.out)
	}
}
