// Package program wires everything into one Program and offers the services
// that the command line and the page share: Assess, Calc, Explain and the
// workshop whose formulas the page shows. Commands and pages are thin views
// over these; none of them reaches past this package to the engine.
package program
