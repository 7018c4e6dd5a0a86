package program

import (
	"net"
	"net/netip"

	"levigate"
)

// loopback refuses an address that other machines could reach.
func loopback(addr string) error {
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return &levigate.Error{Code: levigate.Invalid, Message: addr + " is not an address", Help: "write it like 127.0.0.1:7420", Cause: err}
	}
	ip, err := netip.ParseAddr(host)
	if host == "localhost" || err == nil && ip.IsLoopback() {
		return nil
	}
	return &levigate.Error{Code: levigate.Invalid, Message: addr + " can be reached from other machines, and the page has no login",
		Help: "listen on 127.0.0.1; to reach it from elsewhere, go through a tunnel that asks who is there"}
}
