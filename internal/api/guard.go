package api

import (
	"crypto/sha256"
	"crypto/subtle"
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"

	"levigate"
	"levigate/wire"
)

// policy lets a page load what is served here and nothing else: no inline
// script or style, no frame, no form, no other host.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; manifest-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// mostBody is the largest request that is read, in bytes.
const mostBody = 1 << 20

// cookieName is the cookie that holds the launch token after the first visit.
const cookieName = "levigate"

// guard stands before every answer. There is no login, so whoever asks must
// hold the token that was printed at the start; and a foreign site open in the
// same browser must not get through on the cookie: the Host header is compared
// with the names of this machine, and what another site started is refused.
func (s *Server) guard(next http.Handler) http.Handler {
	hosts := hostsOf(s.config.Address)
	cross := http.NewCrossOriginProtection()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer s.recovered(w, r)
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		switch {
		case !slices.Contains(hosts, r.Host):
			refuse(w, r, http.StatusMisdirectedRequest, "this program answers only to its own address", "open the address that levigate printed")
		case foreign(r), cross.Check(r) != nil:
			refuse(w, r, http.StatusForbidden, "another site asked for this", "open the address that levigate printed")
		case s.arrives(w, r):
		case !s.holds(r):
			refuse(w, r, http.StatusUnauthorized, "the launch token is missing or wrong", "open the address that levigate printed")
		case !isAPI(r) && r.Method != http.MethodGet && r.Method != http.MethodHead:
			h.Set("Allow", "GET, HEAD")
			refuse(w, r, http.StatusMethodNotAllowed, "a page can only be read", "")
		default:
			// One byte more than is read tells too large from just fitting.
			r.Body = http.MaxBytesReader(w, r.Body, mostBody+1)
			next.ServeHTTP(w, r)
		}
	})
}

// foreign reports a request that another site's page started. Following a link
// to a page is nobody's harm; loading it into another page, or asking the
// programming interface, is.
func foreign(r *http.Request) bool {
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return false
	}
	return isAPI(r) || r.Header.Get("Sec-Fetch-Mode") != "navigate" || r.Method != http.MethodGet
}

// arrives answers the first visit: the token in the address becomes a cookie
// and leaves the address, so that no history or screenshot keeps it.
func (s *Server) arrives(w http.ResponseWriter, r *http.Request) bool {
	if r.URL.Path != "/" || r.Method != http.MethodGet || !s.isToken(r.URL.Query().Get("token")) {
		return false
	}
	http.SetCookie(w, &http.Cookie{Name: cookieName, Value: s.config.Token, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
	if r.Header.Get("Sec-Fetch-Site") == "cross-site" {
		// Come from a page elsewhere, as from the file that serve --open writes: a
		// redirect would still count as that page's, and go on without the cookie.
		w.Header().Set("Refresh", "0; url=/")
		w.Header().Set("Content-Type", "text/plain; charset=utf-8")
		fmt.Fprintln(w, "Levigate opens.")
		return true
	}
	http.Redirect(w, r, "/", http.StatusSeeOther)
	return true
}

// holds reports whether a request carries the token, as a cookie or as a bearer.
func (s *Server) holds(r *http.Request) bool {
	if bearer, ok := strings.CutPrefix(r.Header.Get("Authorization"), "Bearer "); ok {
		return s.isToken(bearer)
	}
	// A program that listened here before may have left a cookie of the same name.
	return slices.ContainsFunc(r.CookiesNamed(cookieName), func(c *http.Cookie) bool { return s.isToken(c.Value) })
}

// isToken compares in a time that tells nothing, not even the length.
func (s *Server) isToken(given string) bool {
	if s.config.Token == "" {
		return false
	}
	a, b := sha256.Sum256([]byte(given)), sha256.Sum256([]byte(s.config.Token))
	return subtle.ConstantTimeCompare(a[:], b[:]) == 1
}

func isAPI(r *http.Request) bool { return strings.HasPrefix(r.URL.Path, "/api/") }

// refuse answers what never came through the guard: a plain sentence, or for
// programs the same in JSON.
func refuse(w http.ResponseWriter, r *http.Request, status int, message, help string) {
	if !isAPI(r) {
		text := message
		if help != "" {
			text += "; " + help
		}
		http.Error(w, text, status)
		return
	}
	code := levigate.Invalid
	if status == http.StatusNotFound {
		code = levigate.NotFound
	}
	if status == http.StatusInternalServerError {
		code = levigate.Internal
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	json.NewEncoder(w).Encode(wire.Refusal{Code: string(code), Message: message, Help: help})
}

// recovered keeps a fault of ours from ending the program. The log says where it
// was and not with what: a formula is nobody's business.
func (s *Server) recovered(w http.ResponseWriter, r *http.Request) {
	fault := recover()
	if fault == nil {
		return
	}
	if fault == http.ErrAbortHandler {
		panic(fault)
	}
	said := "a fault"
	if e, ok := fault.(runtime.Error); ok {
		said = e.Error()
	}
	s.config.Log.Printf("%s: %s\n%s", r.Pattern, said, debug.Stack())
	refuse(w, r, http.StatusInternalServerError, "something went wrong here; that is our fault", "try again; what was saved is kept")
}

// hostsOf lists the Host headers a browser on this machine may send.
func hostsOf(address string) []string {
	_, port, err := net.SplitHostPort(address)
	if err != nil {
		return []string{address}
	}
	out := []string{address}
	for _, host := range []string{"127.0.0.1", "localhost", "::1"} {
		out = append(out, net.JoinHostPort(host, port))
	}
	return out
}
