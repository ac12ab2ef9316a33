package scene

func newDebrief(j *Job) Scene { return newWords(j) }
