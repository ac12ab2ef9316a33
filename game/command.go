package main

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"evenwear/scenarios"
)

// wrongUse is the exit code of a mistake on the command line; 1 is any other failure.
const wrongUse = 2

// A mistake is a flag or a value that cannot be meant.
type mistake string

func (m mistake) Error() string { return string(m) }

// mistaken makes a mistake of a sentence: where, what is wrong, what is allowed.
func mistaken(format string, args ...any) error { return mistake(fmt.Sprintf(format, args...)) }

// read reads a command line. What is wrong with it comes back as a mistake: one
// sentence with how to get help, instead of the pages that the library prints.
func (c *cli) read(args []string) (*kong.Context, error) {
	k, err := kong.New(c, kong.Name("game"), kong.Description("Evenwear: disc brakes inspected on computed cars."))
	if err != nil {
		return nil, err
	}
	if len(args) > 0 && args[0] == "help" {
		args = append(slices.Clone(args[1:]), "--help")
	}
	ctx, err := k.Parse(args)
	var bad *kong.ParseError
	if errors.As(err, &bad) {
		where := typedCommand(bad.Context, args)
		return nil, mistake(where + ": " + refusal(bad, where) + helps(where))
	}
	if err != nil {
		return nil, err
	}
	if i := slices.IndexFunc(args, func(a string) bool { return a == "" || emptyFlag.MatchString(a) }); i >= 0 {
		if args[i] == "" && i > 0 {
			i-- // what the empty value was given to
		}
		where := typedCommand(ctx, args)
		return nil, mistake(fmt.Sprintf("%s: %s: a value is missing%s", where, strings.TrimSuffix(args[i], "="), helps(where)))
	}
	return ctx, nil
}

// helps says how to get help about a command.
func helps(where string) string { return "; " + where + " --help tells more" }

// typedCommand is the program's name with the command that was typed: "game new job".
func typedCommand(ctx *kong.Context, args []string) string {
	where := ctx.Model.Name
	for _, p := range ctx.Path {
		if p.Command != nil && slices.Contains(args, p.Command.Name) { // else it is the default
			where += " " + p.Command.Name
		}
	}
	return where
}

var (
	unknownFlag = regexp.MustCompile(`^unknown flag (\S+?)(?:,|$)`)
	unexpected  = regexp.MustCompile(`^unexpected argument (\S+?)(?:,|$)`)
	missingArg  = regexp.MustCompile(`^expected (?:one of )?(.*)$`)
	wrongValue  = regexp.MustCompile(`^(-\S+?)(?:=\S*)?: .*\b(bool|uint|int|float|string)\b.* but got (.*?)(?: \(\w+\))?(?:;.*)?$`)
	emptyFlag   = regexp.MustCompile(`^--[a-z]+=$`)
	together    = regexp.MustCompile(`^(--\S+) and (--\S+) can't be used together`)
)

// wanted is what a flag of a kind takes.
var wanted = map[string]string{"bool": "true or false, or nothing", "uint": "a whole number, none below 0", "int": "a whole number", "float": "a number", "string": "a value"}

// refusal says what is wrong and what is allowed.
func refusal(bad *kong.ParseError, where string) string {
	text, ctx := bad.Error(), bad.Context
	node := ctx.Selected()
	if m := unknownFlag.FindStringSubmatch(text); m != nil {
		var known []string
		for _, f := range ctx.Flags() {
			known = append(known, "--"+f.Name)
		}
		return "unknown flag " + m[1] + "; " + scenarios.NearestWords(m[1], known)
	}
	if m := unexpected.FindStringSubmatch(text); m != nil {
		if node == nil || !strings.HasSuffix(where, " "+node.Name) {
			return fmt.Sprintf("unexpected argument %s: there is no such command; %s", m[1], scenarios.NearestWords(m[1], commands(ctx.Model.Node)))
		}
		if len(node.Children) > 0 {
			return fmt.Sprintf("unexpected argument %s; %s", m[1], scenarios.NearestWords(m[1], commands(node)))
		}
		return fmt.Sprintf("unexpected argument %s; allowed is: game %s", m[1], node.Summary())
	}
	if m := together.FindStringSubmatch(text); m != nil {
		return m[1] + " and " + m[2] + " do not go together; give one of them"
	}
	if m := wrongValue.FindStringSubmatch(text); m != nil {
		if strings.Contains(m[3], "EOL") {
			return m[1] + ": a value is missing, want " + wanted[m[2]]
		}
		return fmt.Sprintf("%s: %s is not allowed, want %s", m[1], m[3], wanted[m[2]])
	}
	if m := missingArg.FindStringSubmatch(text); m != nil && node != nil {
		return fmt.Sprintf("%s is missing; allowed is: game %s", strings.ReplaceAll(m[1], `"`, ""), node.Summary())
	}
	return text
}

// commands are the names of the commands below a node.
func commands(n *kong.Node) (names []string) {
	for _, c := range n.Children {
		names = append(names, c.Name)
	}
	return names
}
