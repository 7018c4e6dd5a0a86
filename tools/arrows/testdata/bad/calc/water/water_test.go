package water

import _ "example.test/bad/rules" // passes: tests may
