package scene

func newHandover(j *Job) Scene { return newWords(j) }
func newDebrief(j *Job) Scene  { return newWords(j) }
