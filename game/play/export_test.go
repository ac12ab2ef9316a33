package play

// Disguise gives s the job of another session, so that only the cars differ.
func Disguise(s, as *Session) { s.job = as.job }
