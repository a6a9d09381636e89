module badgewright

go 1.26.0

require (
	codeberg.org/go-pdf/fpdf v0.12.0
	github.com/anthonynsimon/bild v0.14.0
	github.com/arran4/golang-ical v0.3.4
	github.com/emersion/go-ical v0.0.0-20250329121855-f41e73efc392
	github.com/ericpauley/go-quantize v0.0.0-20200331213906-ae555eb2afa4
	github.com/ledongthuc/pdf v0.0.0-20260907135840-6c8c28e0e8a0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/rickar/cal/v2 v2.1.13
	github.com/shopspring/decimal v1.6.0
	github.com/stretchr/testify v1.12.1
	golang.org/x/image v0.47.0
	golang.org/x/text v0.44.0
)

require (
	github.com/teambition/rrule-go v1.8.2 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/sys v0.49.0 // indirect
)
