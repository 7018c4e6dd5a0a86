// Package arrows keeps the direction of the imports. The picture of who may
// know whom is a table of text lines; a test holds the whole tree to it, and
// holds the checker itself to a fixture that breaks the table on purpose.
package arrows

// ours says which package of this module may import which. The package named
// on the left may import those on the right, and the standard library.
//
//   - root is the package at the top of the module
//   - x/* is every package below x; a line for one of them comes before it
//   - anything lifts the limit
//
// A package without a line is a fault: where it stands is decided when it is
// made, not when it hurts.
const ours = `
quantity            ->
cite                ->
work                -> quantity cite
work/render         -> work quantity cite
work/worktest       -> work quantity cite
calc/numeric        ->
calc/*              -> calc/numeric work quantity cite
root                -> work quantity cite
formulafile         -> root quantity cite
refdata             -> root quantity cite
rules               -> root refdata work quantity cite
wire                -> root work quantity cite
internal/fold       ->
internal/library    -> root refdata quantity internal/fold
internal/assess     -> root calc/* refdata rules work quantity cite internal/assess/*
internal/assess/*   -> root calc/* refdata rules work quantity cite internal/assess/*
internal/validation -> root calc/* refdata formulafile internal/assess internal/library work quantity cite
internal/exchange   -> root formulafile quantity
internal/chart      -> quantity
internal/view       -> root work work/render internal/chart quantity
internal/sheet      -> root formulafile quantity
internal/store/*    -> root work quantity cite internal/ledger internal/fold internal/store/*
internal/papers     -> root work work/render internal/chart quantity cite
internal/ledger     -> root work quantity cite
internal/api        -> root wire work work/render internal/chart internal/view ui quantity
ui                  ->
internal/program    -> anything
client              -> root wire
cmd/levigate        -> internal/program root wire formulafile work work/render quantity
tools/*             -> anything
examples            -> anything
`

// theirs says which modules of others the packages at the bottom may use.
// These are the ones a reader checks against the papers and others may import,
// so what they stand on is kept few. A package without a line here may use any
// module that go.mod requires.
const theirs = `
quantity     -> github.com/quagmt/udecimal
cite         ->
work         ->
calc/numeric -> gonum.org/v1/gonum
calc/*       ->
`
