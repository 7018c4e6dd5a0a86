package formulafile

import (
	"github.com/goccy/go-yaml/ast"

	"levigate"
)

// formula walks the tree. The list of fields is the contract's list of keys.
func (r *reader) formula(root ast.Node) *levigate.Formula {
	top := value{node: root, at: begins(root, levigate.Place{}), name: "the file", like: "levigate: " + Edition}
	if !r.edition(top) {
		return nil
	}
	f := &levigate.Formula{}
	r.group(top, "a formula", []field{
		// Its own complaint was made already.
		{name: "levigate", like: Edition, read: func(value) {}},
		{name: "code", like: "HP-03", needs: true, read: func(v value) { f.Code = r.text(v, MaxCode) }},
		{name: "name", like: "Walnut hand polish", needs: true, read: func(v value) { f.Name = r.text(v, MaxName) }},
		{name: "product", like: "hand-wash", needs: true, read: func(v value) { f.Product = r.choice(v, levigate.Products) }},
		{name: "lines", like: "[" + lineLike + "]", needs: true, read: func(v value) { f.Lines = r.lines(v) }},
		{name: "materials", like: "[" + materialLike + "]", read: func(v value) { f.Materials = r.materials(v) }},
		{name: "making", like: "[" + stepLike + "]", read: func(v value) { f.Making = r.steps(v) }},
		{name: "batch", like: "500 g", read: func(v value) { f.Batch = r.batch(v) }},
		{name: "markets", like: "[eu]", read: func(v value) { f.Markets = r.words(v, "market") }},
		{name: "claims", like: "[low-water]", read: func(v value) { f.Claims = r.words(v, "claim") }},
		{name: "use", like: useLike, read: func(v value) { f.Use = r.use(v) }},
		{name: "pack", like: "TUBE-75", read: func(v value) { f.Pack = r.text(v, MaxCode) }},
		{name: "notes", like: "stiff after a day, milks well", read: func(v value) { f.Notes = r.prose(v, MaxNotes) }},
	})
	// What is left to 100 is worked out here; whether there is anything left is
	// a finding, not a fault of the file.
	f.FillUp()
	return f
}

const useLike = "{area: [hands], eye: false, spray: false, under-3: false}"

// use reads where and by whom the product is used.
func (r *reader) use(v value) levigate.Use {
	var u levigate.Use
	yes := func(to *bool) func(value) {
		return func(v value) { *to, _ = r.truth(v) }
	}
	r.group(v, "use", []field{
		{name: "area", like: "[hands]", read: func(v value) { u.Area = r.words(v, "area") }},
		{name: "eye", like: "false", read: yes(&u.Eye)},
		{name: "spray", like: "false", read: yes(&u.Spray)},
		{name: "under-3", like: "false", read: yes(&u.Under3)},
	})
	return u
}
