package api

import (
	"encoding/json"
	"fmt"
	"net/http"
	"sync"
	"time"

	"levigate/wire"
)

// heartbeat is how often an idle stream shows that it lives.
const heartbeat = 15 * time.Second

const (
	// mostWaiting is how many events a listener may be behind before it is let
	// go; its browser then connects again and reads the drafts anew.
	mostWaiting = 64
	// mostListeners is far above the windows anybody has open.
	mostListeners = 100
	// slowest is how long one write may take.
	slowest = 10 * time.Second
)

// hub tells every listener what has changed.
type hub struct {
	mu        sync.Mutex
	listeners map[chan wire.Event]bool
	closed    bool
}

func newHub() *hub { return &hub{listeners: map[chan wire.Event]bool{}} }

// join gives a channel of events, closed when the hub ends or the listener falls
// behind; nil when there is no room.
func (h *hub) join() chan wire.Event {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.closed || len(h.listeners) >= mostListeners {
		return nil
	}
	c := make(chan wire.Event, mostWaiting)
	h.listeners[c] = true
	return c
}

func (h *hub) leave(c chan wire.Event) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.drop(c)
}

func (h *hub) drop(c chan wire.Event) {
	if h.listeners[c] {
		delete(h.listeners, c)
		close(c)
	}
}

// tell never waits: who is too far behind is let go.
func (h *hub) tell(e wire.Event) {
	h.mu.Lock()
	defer h.mu.Unlock()
	for c := range h.listeners {
		select {
		case c <- e:
		default:
			h.drop(c)
		}
	}
}

func (h *hub) close() {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.closed = true
	for c := range h.listeners {
		h.drop(c)
	}
}

// events is the stream of what changes.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	c := s.hub.join()
	if c == nil {
		refuse(w, r, http.StatusServiceUnavailable, "no more listeners are taken", "close a window that is not used")
		return
	}
	defer s.hub.leave(c)
	out := http.NewResponseController(w)
	write := func(format string, args ...any) bool {
		// The server's own time for an answer is too short for a stream.
		out.SetWriteDeadline(time.Now().Add(slowest))
		_, err := fmt.Fprintf(w, format, args...)
		return err == nil && out.Flush() == nil
	}
	out.SetReadDeadline(time.Time{})
	w.Header().Set("Content-Type", "text/event-stream")
	w.WriteHeader(http.StatusOK)
	if !write(": ping\n\n") {
		return
	}
	beat := time.NewTicker(s.config.Heartbeat)
	defer beat.Stop()
	for {
		select {
		case <-r.Context().Done():
			return
		case <-beat.C:
			if !write(": ping\n\n") {
				return
			}
		case e, ok := <-c:
			if !ok {
				return
			}
			data, err := json.Marshal(e)
			if err != nil || !write("event: draft\ndata: %s\n\n", data) {
				return
			}
		}
	}
}
