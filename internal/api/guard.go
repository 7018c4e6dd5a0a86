package api

import (
	"net"
	"net/http"
	"slices"
)

// policy lets a page load its own style sheet and icon and nothing else: no
// script, no frame, no form, no other host.
const policy = "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// guard stands before every answer. The page has no login, so a foreign site
// open in the same browser must not reach it: the Host header is compared with
// the names of this machine (a foreign name that points here is refused), and
// requests another site started are refused too.
func guard(next http.Handler, address string) http.Handler {
	hosts := hostsOf(address)
	inside := http.NewCrossOriginProtection().Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if !slices.Contains(hosts, r.Host) {
			http.Error(w, "this page answers only to its own address", http.StatusMisdirectedRequest)
			return
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "the page can only be read", http.StatusMethodNotAllowed)
			return
		}
		inside.ServeHTTP(w, r)
	})
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
