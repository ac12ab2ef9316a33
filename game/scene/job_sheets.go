package scene

func newCall(j *Job) Scene     { return newWords(j) }
func newHandover(j *Job) Scene { return newWords(j) }
func newDebrief(j *Job) Scene  { return newWords(j) }
