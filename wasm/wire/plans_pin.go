//go:build pin

package wire

// Plans is not for the pin's program: what of it comes is passed over.
type Plans struct{}
