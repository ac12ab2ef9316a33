// Package record keeps sessions on disk as they happen.
//
// A session is its seed and its acts. Its file is a line of JSON for the header
// and a line of JSON for each act, appended and synced before the act counts as
// done. Nothing derived and no wall time stands in it: readings and marks come
// back by playing the acts again.
//
// A kill at any byte loses at most the act that was being written: a last line
// without its line end is dropped with a notice. A file that is damaged anywhere
// else is set aside under another name, which the error tells, and never
// overwritten.
package record

// Version is what a header must carry to be read. It changes when stored acts
// would replay differently.
const Version = 1
