// Package scenarios turns YAML into cars, causes, remedies and jobs. There is no
// key with which a file could state a symptom, a reading or a mark: an owner's
// complaint is a list of claims that loading computes and refuses when false.
package scenarios
