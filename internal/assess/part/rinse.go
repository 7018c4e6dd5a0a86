package part

// RinseGrid is the water added on the rinse path, g per 100 g of the formula:
// close together where the body goes, far apart where it is milk.
var RinseGrid = rinseGrid()

func rinseGrid() []float64 {
	var out []float64
	for _, s := range []struct{ from, to, step float64 }{{0, 10, 1}, {10, 20, 2}, {20, 50, 5}, {50, 100, 10}, {100, 900, 100}} {
		for x := s.from; x < s.to; x += s.step {
			out = append(out, x)
		}
	}
	return append(out, 900)
}
