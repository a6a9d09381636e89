// Package calls answers the page: one handler file for each section of the
// page, one table of calls, and a session that keeps what is costly to find
// again. It knows nothing of browsers; the bridge and the native program both
// go through Do.
package calls

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"

	"badgewright/reduce"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// Job is what comes with a call beside its request.
type Job struct {
	// Bytes came with the request: a file's head, or pixels.
	Bytes []byte
	// Progress is told how far a long step has come; its error stops the call.
	Progress reduce.Progress
}

// Reply is an answer and the bytes that go with it.
type Reply struct {
	Answer any
	Bytes  []byte
}

type handler func(s *Session, job Job, ask []byte) (Reply, error)

// table is every call of this program, by the name the wire gives it. The
// page's two programs are built from one source: with the tag pin the calls that
// need no drawing are left out, with the tag order those that do; without a tag
// all are there.
var table = map[string]handler{}

// enter adds calls to the table.
func enter(calls map[string]handler) { maps.Copy(table, calls) }

// answering reads a request of the handler's own type.
func answering[A any](f func(*Session, Job, A) (Reply, error)) handler {
	return func(s *Session, job Job, ask []byte) (Reply, error) {
		var a A
		if err := json.Unmarshal(ask, &a); err != nil {
			return Reply{}, fmt.Errorf("calls: a request that cannot be read: %w", err)
		}
		return f(s, job, a)
	}
}

// ErrStopped is what a stopped call returns.
var ErrStopped = errors.New("stopped")

// errGone is returned for a drawing that the session no longer keeps.
var errGone = errors.New("this drawing is no longer open")

// Do answers one call by name.
func (s *Session) Do(name string, ask []byte, job Job) (Reply, error) {
	h, ok := table[name]
	if !ok {
		return Reply{}, fmt.Errorf("calls: no call is named %q", name)
	}
	if job.Progress == nil {
		job.Progress = func(float64, string) error { return nil }
	}
	return h(s, job, ask)
}

// FailureOf puts an error into words for the page.
func FailureOf(err error) wire.Failure {
	var r *reduce.Refusal
	var m *unit.Mistake
	switch {
	case errors.Is(err, ErrStopped):
		return wire.Failure{Kind: wire.Stopped, What: "Stopped.", Do: "Nothing was changed."}
	case errors.Is(err, errGone):
		return wire.Failure{Kind: wire.Gone, What: "This drawing is no longer open.", Do: "Open its file again."}
	case errors.As(err, &r):
		return wire.Failure{Kind: wire.Refused, What: r.What, Do: r.Do}
	case errors.As(err, &m):
		return wire.Failure{Kind: wire.Refused, What: m.What, Do: m.Do}
	default:
		return wire.Failure{Kind: wire.Refused, What: err.Error(), Do: "Your drawing is untouched; try another way."}
	}
}
