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
		{"own --clock 9 reservoir_level=40", []string{"--clock 9: want 100 to 500000 km"}},
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
			if e.out != "" {
				t.Errorf("written to the output: %.100q", e.out)
			}
		})
	}
}

// TestWrongUse: a flag, a value or a command that cannot be meant is one sentence
// that says where, what is wrong, what is allowed and how to get help, and ends
// with the exit code of a mistake on the command line.
func TestWrongUse(t *testing.T) {
	for _, r := range []struct {
		args string // with blanks between
		want []string
	}{
		{"--wdth 60", []string{"game: unknown flag --wdth; the nearest known are ", "game --help tells more"}},
		{"term --wdth 60", []string{"game term: unknown flag --wdth; the nearest known are --width, ", "game term --help tells more"}},
		{"term --width", []string{"game term: --width: a value is missing"}},
		{"term --width --bench", []string{"game term: --width: ", "--bench", "want a whole number"}},
		{"term --width wide", []string{"game term: --width: \"wide\" is not allowed, want a whole number"}},
		{"term --width 0", []string{"game term: --width 0: a line has 20 to 500 characters"}},
		{"term --width=-3", []string{"--width -3: a line has 20 to 500 characters"}},
		{"term --width 501", []string{"--width 501: a line has 20 to 500 characters"}},
		{"term --width 1e3", []string{"--width: \"1e3\" is not allowed"}},
		{"term --seed 0", []string{"game term: --seed 0: want a whole number from 1"}},
		{"term --seed=-1", []string{"--seed: \"-1\" is not allowed, want a whole number, none below 0"}},
		{"term --resume=", []string{"game term: --resume: a value is missing"}},
		{"term --lesson=", []string{"game term: --lesson: a value is missing"}},
		{"--folder= list", []string{"game list: --folder: a value is missing"}},
		{"--sessions= list", []string{"game list: --sessions: a value is missing"}},
		{"term --bench --lesson one_piston_two_pads", []string{"--bench and --lesson do not go together"}},
		{"term warm_wheel --bench", []string{"game term: warm_wheel and --bench do not go together"}},
		{"term warm_wheel --resume x", []string{"warm_wheel and --resume do not go together"}},
		{"term warm_wheel thirsty", []string{"game term: unexpected argument thirsty; allowed is: game term [<job>] [flags]"}},
		{"trem", []string{"game: unexpected argument trem: there is no such command; the nearest known are term, "}},
		{"window x", []string{"game window: unexpected argument x; allowed is: game window"}},
		{"--slate=maybe", []string{"game: --slate: \"maybe\" is not allowed, want true or false"}},
		{"check", []string{"game check: <folder> is missing; allowed is: game check <folder>"}},
		{"check a b", []string{"game check: unexpected argument b"}},
		{"new", []string{"game new: ", "is missing"}},
		{"new job", []string{"game new job: <file> is missing"}},
		{"new car x", []string{"game new: unexpected argument car; the nearest known is job"}},
		{"play", []string{"game play: <file> is missing"}},
		{"play --width 0 mine/jobs/a.yaml", []string{"game play: --width 0: a line has 20 to 500 characters"}},
		{"play --seed 0 mine/jobs/a.yaml", []string{"game play: --seed 0: want a whole number from 1"}},
		{"schema a b", []string{"game schema: unexpected argument b"}},
		{"records --mixed --due", []string{"game records: --mixed and --due do not go together"}},
		{"records x", []string{"game records: unexpected argument x"}},
		{"list --all", []string{"game list: unknown flag --all"}},
		{"version x", []string{"game version: unexpected argument x"}},
		{"forget a b", []string{"game forget: unexpected argument b"}},
		{"own --clock x", []string{"game own: --clock: \"x\" is not allowed, want a number; "}},
		{"own --clock NaN reservoir_level=40", []string{"game own: --clock NaN: want 100 to 500000 km"}},
		{"own --pads=-3 reservoir_level=40", []string{"game own: --pads -3: want 100 to 200000 km, and no more than the clock shows"}},
		{"own --room Inf reservoir_level=40", []string{"game own: --room +Inf: want -20 to 45"}},
		{"audit --sample=-1", []string{"game audit: --sample -1: want 0 or more"}},
		{"audit --workers=-2", []string{"--workers -2: want 0 or more"}},
		{"audit --seed x", []string{"game audit: --seed: \"x\" is not allowed"}},
		{"trace -width 3", []string{"trace: ", "-width", "trace -help tells more"}},
		{"trace -pressure", []string{"trace: ", "-pressure", "trace -help tells more"}},
	} {
		t.Run(r.args, func(t *testing.T) {
			t.Parallel()
			e := typedIn(t, "", strings.Fields(r.args)...)
			failed(t, e, append(r.want, "help tells more")...)
			if e.code != 2 || e.out != "" || strings.Count(e.errs, "\n") != 1 {
				t.Errorf("exit %d, want 2; written %.100q, said %q", e.code, e.out, e.errs)
			}
		})
	}
}

// TestHelp: help is an answer, by any of its names.
func TestHelp(t *testing.T) {
	for _, args := range []string{"--help", "-h", "help", "help term", "term --help", "trace -help"} {
		if e := typedIn(t, "", strings.Fields(args)...); e.code != 0 || e.errs != "" || len(e.out) < 100 {
			t.Errorf("%s: exit %d, said %q, wrote %.100q", args, e.code, e.errs, e.out)
		}
	}
}

// TestQuitIsNoFailure: who leaves a job, a self-check or the bench has not failed;
// lines from a pipe that end before the job is over have.
func TestQuitIsNoFailure(t *testing.T) {
	for _, r := range []struct {
		lines, args string
		code        int
	}{{"1\nquit\n", "term warm_wheel", 0}, {"quit\n", "term selfcheck", 0}, {"quit\n", "term --bench", 0}, {"", "term --bench", 0}, {"1\n", "term warm_wheel", 1}} {
		if e := typedIn(t, r.lines, append(strings.Fields(r.args), "--sessions", t.TempDir())...); e.code != r.code {
			t.Errorf("%q to %s: exit %d, want %d; said %q", r.lines, r.args, e.code, r.code, e.errs)
		}
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
