package inspect

type worldCache struct{}
