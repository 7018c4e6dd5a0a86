package numeric

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// LeastSquares moves x to where the sum of squares of n residuals is lowest.
// residuals fills out from x. The method is Levenberg and Marquardt's with
// derivatives by differences: Gauss-Newton where the residuals are nearly
// straight in x, a short step downhill where they are not.
func LeastSquares(residuals func(x, out []float64), x []float64, n int) ([]float64, error) {
	x = append([]float64(nil), x...)
	p := len(x)
	if n < p {
		return nil, errors.New("numeric: fewer residuals than unknowns")
	}
	r, trial := make([]float64, n), make([]float64, n)
	residuals(x, r)
	best := sumSquares(r)
	jac := mat.NewDense(n, p, nil)
	damp := 1e-3
	for range 200 {
		differences(residuals, x, r, trial, jac)
		var a mat.SymDense
		a.SymOuterK(1, jac.T())
		var g mat.VecDense
		g.MulVec(jac.T(), mat.NewVecDense(n, r))
		moved := false
		for ; damp < 1e12; damp *= 10 {
			damped := mat.NewSymDense(p, nil)
			damped.CopySym(&a)
			for i := range p {
				damped.SetSym(i, i, a.At(i, i)*(1+damp)+1e-300)
			}
			var chol mat.Cholesky
			var step mat.VecDense
			if !chol.Factorize(damped) || chol.SolveVecTo(&step, &g) != nil {
				continue
			}
			next := make([]float64, p)
			for i := range next {
				next[i] = x[i] - step.AtVec(i)
			}
			residuals(next, trial)
			if s := sumSquares(trial); s < best {
				moved = best-s > 1e-14*best
				x, best = next, s
				copy(r, trial)
				damp = math.Max(damp/10, 1e-12)
				break
			}
		}
		if !moved {
			return x, nil
		}
	}
	return x, errors.New("numeric: least squares had not settled after 200 steps")
}

func differences(residuals func(x, out []float64), x, r, trial []float64, jac *mat.Dense) {
	for j := range x {
		keep := x[j]
		h := 1e-6 * math.Max(math.Abs(keep), 0.1)
		x[j] = keep + h
		residuals(x, trial)
		for i := range trial {
			jac.Set(i, j, (trial[i]-r[i])/h)
		}
		x[j] = keep
	}
}

func sumSquares(r []float64) float64 {
	s := 0.0
	for _, v := range r {
		s += v * v
	}
	if math.IsNaN(s) {
		return math.Inf(1)
	}
	return s
}
