package rules

// retired lists the numbers of rules that went, each with the reason and the
// release it left with. A finding kept in an old version still finds its number
// explained here.
var retired = map[string]string{}
