package cite

import _ "github.com/alecthomas/kong" // caught: none of others' at all
