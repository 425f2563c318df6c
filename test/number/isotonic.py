"""Independent answers for the isotonic fit: the quadratic optimum by non-negative least squares.

A rising fit is a first value, of either sign, and steps that are not below nothing. So it is a problem of non-negative
least squares, whose optimum is found by an active-set method that pools nothing. scipy's own isotonic regression must
agree with it. Run with Python 3, numpy and scipy; it writes isotonic.json beside itself, which prettier then lays out.
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy.optimize import isotonic_regression, nnls

here = Path(__file__).parent
rng = np.random.default_rng(21)


def optimum(y, w):
    n = len(y)
    steps = np.tril(np.ones((n, n)))
    # The first value may be below nothing: one more column for its negative.
    a = np.hstack([-np.ones((n, 1)), steps])
    root = np.sqrt(w)
    x, _ = nnls(a * root[:, None], y * root, maxiter=100 * n)
    return a @ x


cases = []
for kind in ("rising", "random", "ties", "falling", "weighted"):
    for n in (1, 2, 3, 5, 8, 13, 30):
        if kind == "rising":
            y = np.arange(n) * 0.4 + rng.normal(0, 0.4, n)
        elif kind == "ties":
            y = rng.integers(0, 4, n).astype(float)
        elif kind == "falling":
            y = -np.arange(n) + rng.normal(0, 0.2, n)
        else:
            y = rng.uniform(-5, 5, n)
        w = rng.uniform(0.1, 4, n) if kind == "weighted" else np.ones(n)
        y, w = np.round(y, 4), np.round(w, 3)
        fit = optimum(y, w)
        assert np.allclose(fit, isotonic_regression(y, weights=w).x, atol=1e-9)
        cases.append({"kind": kind, "values": y.tolist(), "weights": w.tolist(), "fit": fit.tolist()})

(here / "isotonic.json").write_text(json.dumps({"scipy": scipy.__version__, "cases": cases}))
