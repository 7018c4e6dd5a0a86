package numeric

import _ "gonum.org/v1/gonum/floats"
