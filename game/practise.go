package main

import (
	"crypto/rand"
	"encoding/binary"
	"time"

	"evenwear/game/practice"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// practiseWord is what stands for the car that a learner needs next.
const practiseWord = "practise"

// nextCar chooses it from what is kept in a folder; tell is told what is damaged.
func nextCar(lib *scenarios.Library, dir string, tell func(error)) (practice.Choice, error) {
	history, err := results(dir, tell)
	if err != nil {
		return practice.Choice{}, err
	}
	played, err := playedHere(dir)
	if err != nil {
		return practice.Choice{}, err
	}
	return practice.Next(lib, history, played, time.Now(), luck())
}

// playedHere are the jobs of the sessions in a folder.
func playedHere(dir string) (map[string]bool, error) {
	list, err := record.List(dir)
	if err != nil {
		return nil, unkept(dir, err)
	}
	played := map[string]bool{}
	for _, e := range list {
		played[e.Job] = true
	}
	return played, nil
}

// luck is any number.
func luck() uint64 {
	var b [8]byte
	rand.Read(b[:])
	return binary.LittleEndian.Uint64(b[:])
}

// anySeed is the luck of a session, small enough to be read out loud.
func anySeed() uint64 { return luck()%practice.Seeds + practice.SeedLeast }
