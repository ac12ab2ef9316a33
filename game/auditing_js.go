package main

import "errors"

// auditCmd is not for a browser, which has one thread and no time for it.
type auditCmd struct{}

func (auditCmd) Run() error { return errors.New("the audit does not run in a browser") }
