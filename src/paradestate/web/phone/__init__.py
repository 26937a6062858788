"""The way in for a phone: TLS, pairing, and a gate that admits only paired devices."""
