package mystery // caught: no line

import _ "example.test/bad/rules"
