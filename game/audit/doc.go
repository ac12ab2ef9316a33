// Package audit proves a bank of jobs: that the marks reward saying what one
// believes, that better learners get better marks, that every job can be solved,
// and that beliefs are as often true as they state. It plays every job by
// thousands of simulated learners on the evidence table; nothing is drawn.
package audit
