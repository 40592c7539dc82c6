module ripplewright

go 1.22

require (
	codeberg.org/go-pdf/fpdf v0.11.1 // indirect
	fyne.io/fyne/v2 v2.7.1 // indirect
	github.com/go-fonts/liberation v0.3.3 // indirect
	github.com/shopspring/decimal v1.6.0 // indirect
	github.com/stretchr/testify v1.12.1 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	gopkg.in/yaml.v3 v3.0.1 // indirect
)
