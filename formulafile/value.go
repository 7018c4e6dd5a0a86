package formulafile

import (
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"levigate"
)

// kind is what a value is, before anybody asks what it should be.
type kind string

const (
	isEmpty  kind = "empty"
	isText   kind = "text"
	isNumber kind = "a number"
	isTruth  kind = "true or false"
	isList   kind = "a list"
	isGroup  kind = "a group of keys"
	isOdd    kind = "a special word" // infinity, not-a-number
	isAlien  kind = "something a formula file has no use for"
)

// value is one value of the file with what messages need to know about it.
type value struct {
	node  ast.Node
	at    levigate.Place // of the key when the value is empty
	name  string         // its key
	like  string         // an example of it
	needs bool           // its key can't be left out
}

func (v value) kind() kind {
	switch v.node.(type) {
	case nil, *ast.NullNode:
		return isEmpty
	case *ast.StringNode, *ast.LiteralNode:
		return isText
	case *ast.IntegerNode, *ast.FloatNode:
		return isNumber
	case *ast.BoolNode:
		return isTruth
	case *ast.SequenceNode:
		return isList
	case *ast.MappingNode, *ast.MappingValueNode:
		return isGroup
	case *ast.InfinityNode, *ast.NanNode:
		return isOdd
	}
	return isAlien
}

// raw is a scalar as it is written, quotes and escapes undone: 12.50 stays
// 12.50 and 1e2 stays 1e2.
func (v value) raw() string {
	switch n := v.node.(type) {
	case nil:
		return ""
	case *ast.LiteralNode:
		if n.Value == nil {
			return ""
		}
		return n.Value.Value
	default:
		if t := n.GetToken(); t != nil {
			return t.Value
		}
		return ""
	}
}

// items are the values of a list.
func (v value) items() []value {
	list, ok := v.node.(*ast.SequenceNode)
	if !ok {
		return nil
	}
	out := make([]value, len(list.Values))
	for i, n := range list.Values {
		out[i] = value{node: n, at: begins(n, v.at), name: v.name, like: v.like, needs: true}
	}
	return out
}

// entry is a key with its value. alone says that no colon was written.
type entry struct {
	key   string
	at    levigate.Place
	value ast.Node
	alone bool
}

// entries are the entries of a group, those written twice included.
func (v value) entries() []entry {
	var pairs []*ast.MappingValueNode
	switch n := v.node.(type) {
	case *ast.MappingNode:
		pairs = n.Values
	case *ast.MappingValueNode:
		pairs = []*ast.MappingValueNode{n}
	}
	out := make([]entry, 0, len(pairs))
	for _, p := range pairs {
		t := p.Key.GetToken()
		out = append(out, entry{
			key:   t.Value,
			at:    placeOf(t),
			value: p.Value,
			alone: p.Start == nil || p.Start.Type != token.MappingValueType,
		})
	}
	return out
}

// begins is where a value begins, or the place given for one that is empty or
// whose place the parser has lost.
func begins(n ast.Node, otherwise levigate.Place) levigate.Place {
	var t *token.Token
	switch n := n.(type) {
	case nil, *ast.NullNode:
		return otherwise
	case *ast.LiteralNode:
		t = n.Start
	case *ast.SequenceNode:
		t = n.Start
	case *ast.MappingNode:
		t = n.Start
		if !n.IsFlowStyle && len(n.Values) > 0 {
			t = n.Values[0].Key.GetToken()
		}
	case *ast.MappingValueNode:
		t = n.Key.GetToken()
	default:
		t = n.GetToken()
	}
	if at := placeOf(t); at.Line > 0 && at.Column > 0 {
		return at
	}
	return otherwise
}
