package scoring

// A Reason says why a mark is what it is: the id of a sentence and its numbers.
type Reason struct {
	ID   string
	Args []Arg
}

// An Arg is what a sentence names: a number, or ids to be put in words.
type Arg struct {
	Name   string
	Number float64
	Texts  []string // ids; none where Number counts
}

func number(name string, v float64) Arg { return Arg{Name: name, Number: round(v)} }
func text(name string, ids ...string) Arg {
	return Arg{Name: name, Texts: ids}
}

// The ids of every reason a mark can have.
const (
	DiagnosisTrue    = "reason.diagnosis.true"
	DiagnosisSpread  = "reason.diagnosis.spread"
	DiagnosisWrong   = "reason.diagnosis.wrong"
	DecisionBest     = "reason.decision.best"
	DecisionLoss     = "reason.decision.loss"
	DecisionNeedless = "reason.decision.needless"
	EvidenceBits     = "reason.evidence.bits"
	EvidenceNone     = "reason.evidence.none"
	ConsistencyFair  = "reason.consistency.fair"
	ConsistencyOver  = "reason.consistency.over_sure"
	ConsistencyUnder = "reason.consistency.under_sure"
	ReadingMean      = "reason.reading.mean"
	ReadingNone      = "reason.reading.none"
	ReadingOnPaper   = "reason.reading.on_paper"
	SafetyKept       = "reason.safety.kept"
	SafetyBroken     = "reason.safety.broken"
	SafetyHarm       = "reason.safety.harm"
	SafetyBoth       = "reason.safety.both"
	ProofDone        = "reason.proof.done"
	ProofMissing     = "reason.proof.missing"
	ProofOnPaper     = "reason.proof.on_paper"
	MinutesBest      = "reason.minutes.best"
	MinutesOver      = "reason.minutes.over"
	TotalCapped      = "reason.total.unsafe"
	TotalUnsafeLow   = "reason.total.unsafe_low" // below the cap by itself
	TotalLucky       = "reason.total.beyond_evidence"
)

// A ReasonSpec names a reason and the arguments its sentence may use.
type ReasonSpec struct {
	ID   string
	Args []string
}

// ReasonIDs lists every reason with its arguments, for whoever words them.
// said, loss, mean … are numbers; worst, missing, dangers are ids to be put in words.
func ReasonIDs() []ReasonSpec {
	return []ReasonSpec{
		{DiagnosisTrue, []string{"said", "brier", "prior"}},   // said: share [%] on the true rows
		{DiagnosisSpread, []string{"said", "brier", "prior"}}, // less than half on the truth, nothing else above it
		{DiagnosisWrong, []string{"said", "brier", "prior", "worst", "worst_said"}},
		{DecisionBest, []string{"loss"}},
		{DecisionLoss, []string{"loss", "best", "chosen", "what"}}, // minutes' worth; what: id of the best choice
		{DecisionNeedless, []string{"loss", "needless", "best", "chosen", "what"}},
		{EvidenceBits, []string{"bits", "model", "support"}}, // support [%] on the truth
		{EvidenceNone, []string{"bits", "model", "support"}},
		{ConsistencyFair, []string{"distance", "said_top", "support_top"}},
		{ConsistencyOver, []string{"distance", "said_top", "support_top"}},
		{ConsistencyUnder, []string{"distance", "said_top", "support_top"}},
		{ReadingMean, []string{"mean", "checks", "worst", "worst_divisions"}},
		{ReadingNone, nil},
		{ReadingOnPaper, nil},
		{SafetyKept, []string{"kept", "due"}},
		{SafetyBroken, []string{"kept", "due", "missing"}},
		{SafetyHarm, []string{"kept", "due", "harms", "which"}},
		{SafetyBoth, []string{"kept", "due", "harms", "which", "missing"}},
		{ProofDone, []string{"done", "due"}},
		{ProofMissing, []string{"done", "due", "missing"}},
		{ProofOnPaper, nil},
		{MinutesBest, []string{"spent", "best"}},
		{MinutesOver, []string{"spent", "best"}},
		{TotalCapped, []string{"cap", "uncapped", "dangers"}},
		{TotalUnsafeLow, []string{"cap", "uncapped", "dangers"}},
		{TotalLucky, []string{"diagnosis", "readings", "room", "allowed"}},
	}
}
