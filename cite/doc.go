// Package cite says where a number comes from and how well it is known.
//
// A Source is one publication, person or habit, kept in sources.tsv; a Ref
// points into it (a table, an equation, a row). A Grade ranks evidence from
// "measured here" to "assumed"; a Mark says how a printed number came into
// this program: read in its source, a habit of the trade, or recalled.
package cite
