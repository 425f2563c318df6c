"""Independent litres of tilted tanks: scipy's adaptive quadrature over slices of the tank.

A slice across the axis is a circle, or a rectangle, that is wet up to a straight line; its area comes from the arc sine
form of the segment. Run with Python 3, numpy and scipy; it writes tank.json beside itself, which prettier then lays out.
"""

import json
from math import asin, pi, sqrt, tan, radians
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import quad

here = Path(__file__).parent
rng = np.random.default_rng(23)


def segment(a, h):
    h = min(2 * a, max(0.0, h))
    if a == 0:
        return 0.0
    return pi * a * a / 2 - a * a * asin(1 - h / a) - (a - h) * sqrt(max(0.0, h * (2 * a - h)))


def whole(f, low, high):
    # Pieces short enough that each holds one edge of the wet part at the most.
    cuts = np.linspace(low, high, 65)
    return sum(quad(f, p, q, epsabs=1e-8, epsrel=1e-12, limit=400)[0] for p, q in zip(cuts, cuts[1:]))


def radius(r, c, length, u):
    out = -u if u < 0 else u - length if u > length else 0
    return r if out == 0 else r * sqrt(max(0.0, 1 - (out / c) ** 2))


def volume(t):
    s, s2 = tan(radians(t["tiltDeg"])), tan(radians(t["crossTiltDeg"]))
    length, width, c = t["lengthMm"], t["widthMm"], t["headDepthMm"]
    r, level, m, m2 = width / 2, t["levelMm"], t["measuredFromLowMm"], t["measuredFromLowSideMm"]
    if t["shape"] == "box":
        high = t["heightMm"]
        depth = lambda x, y: min(high, max(0.0, level + s * (m - x) + s2 * (m2 - y)))
        return whole(lambda y: whole_line(lambda x: depth(x, y), length, s), 0, width)
    if t["shape"] == "lying":
        def slice_(u):
            rho = radius(r, c, length, u)
            return segment(rho, level + s * (m - u) - (r - rho))
    else:
        def slice_(u):
            rho = radius(r, c, length, u)
            return segment(rho, m + (level - (u + c)) / s - (r - rho))
    return whole(slice_, -c, length + c)


def whole_line(f, length, s):
    cuts = np.linspace(0, length, 9)
    return sum(quad(f, p, q, epsabs=1e-7, epsrel=1e-11, limit=200)[0] for p, q in zip(cuts, cuts[1:]))


cases = []
for shape in ("standing", "standing dished", "lying dished", "box"):
    for _ in range(7 if shape != "box" else 5):
        t = {
            "shape": shape.split()[0],
            "lengthMm": round(float(rng.uniform(300, 1200)), 1),
            "widthMm": round(float(rng.uniform(200, 600)), 1),
            "heightMm": round(float(rng.uniform(200, 500)), 1) if shape == "box" else None,
            "headDepthMm": round(float(rng.uniform(30, 180)), 1) if "dished" in shape else 0,
            "tiltDeg": round(float(10 ** rng.uniform(-1, 1.6)), 3),
            "crossTiltDeg": round(float(10 ** rng.uniform(-1, 1.6)), 3) if shape == "box" else 0,
        }
        t["measuredFromLowMm"] = round(float(rng.uniform(0, t["widthMm"] if t["shape"] == "standing" else t["lengthMm"])), 1)
        t["measuredFromLowSideMm"] = round(float(rng.uniform(0, t["widthMm"])), 1)
        top = t["lengthMm"] + 2 * t["headDepthMm"] if t["shape"] == "standing" else t["heightMm"] or t["widthMm"]
        t["levelMm"] = round(float(rng.uniform(0.05, 0.95)) * top, 1)
        cases.append({**t, "volumeL": volume(t) / 1e6})

(here / "tank.json").write_text(json.dumps({"scipy": scipy.__version__, "cases": cases}))
