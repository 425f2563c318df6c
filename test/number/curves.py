"""Independent answers for the curves through points: scipy on random points of many kinds.

Run with Python 3, numpy and scipy; it writes curves.json beside itself, which prettier then lays out.
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy.interpolate import Akima1DInterpolator, CubicSpline, PchipInterpolator

here = Path(__file__).parent
rng = np.random.default_rng(20)

METHODS = {
    "monotone": PchipInterpolator,
    "akima": Akima1DInterpolator,
    "natural-spline": lambda x, y: CubicSpline(x, y, bc_type="natural"),
    "not-a-knot": lambda x, y: CubicSpline(x, y, bc_type="not-a-knot"),
}


def points(kind, n):
    gaps = rng.uniform(0.05, 1, n) if kind != "uneven" else 10 ** rng.uniform(-3, 1, n)
    x = np.round(np.cumsum(gaps) - 2, 6)
    if kind == "rising":
        y = np.cumsum(rng.uniform(0, 2, n))
    elif kind == "steps":
        y = np.repeat(rng.uniform(-3, 3, n), 3)[:n]
    elif kind == "smooth":
        y = np.exp(-x) + np.sin(2 * x)
    else:
        y = rng.uniform(-5, 5, n)
    return x, np.round(y, 6)


cases = []
for kind in ("rising", "steps", "smooth", "random", "uneven"):
    for n in (2, 3, 4, 5, 9, 17):
        x, y = points(kind, n)
        at = np.round(x[0] + (x[-1] - x[0]) * np.array([0.03, 0.31, 0.5, 0.77, 0.99]), 6)
        methods = {}
        for name, make in METHODS.items():
            curve = make(x, y)
            whole = curve.antiderivative()
            methods[name] = {
                "slope": curve(x, 1).tolist() if name != "akima" else curve.derivative()(x).tolist(),
                "value": curve(at).tolist(),
                "integral": (whole(at) - whole(x[0])).tolist(),
            }
        cases.append({"kind": kind, "x": x.tolist(), "y": y.tolist(), "at": at.tolist(), "methods": methods})

(here / "curves.json").write_text(json.dumps({"scipy": scipy.__version__, "cases": cases}))
