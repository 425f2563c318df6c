"""Independent answers for the temperature room: mpmath with 40 digits, and scipy for the fits.

Run with Python 3, numpy, scipy and mpmath; it writes fixture.json beside itself, which prettier then lays out.
"""

import json
import re
from pathlib import Path

import mpmath as mp
import numpy as np
import scipy
from scipy.interpolate import PchipInterpolator
from scipy.optimize import curve_fit

mp.mp.dps = 40
here = Path(__file__).parent
prints = (here / "ntc-print.ts").read_text()
tables = (here / "../../packages/loomwright/src/table/thermocouple.ts").read_text()


def printed(name):
    text = re.search(name + r" = rowsOf\(`(.*?)`\)", prints, re.S).group(1)
    return [tuple(row.split(":")) for row in text.split()]


def kernel(name):
    text = re.search(name + r": \[(.*?)\]", prints, re.S).group(1)
    ohms = [x.strip() for x in text.split(",") if x.strip()]
    return [(str(-40 + 5 * i), ohm) for i, ohm in enumerate(ohms)]


def fit(rows, uncertainties=None):
    """Weighted normal equations with 40 digits: residuals of 1/T times T² over the uncertainty."""
    T = [mp.mpf(t) + mp.mpf("273.15") for t, _ in rows]
    L = [mp.log(mp.mpf(r)) for _, r in rows]
    u = uncertainties or ["1"] * len(rows)
    w = [t * t / mp.mpf(x) for t, x in zip(T, u)]
    A = mp.matrix([[wi, wi * l, wi * l**3] for wi, l in zip(w, L)])
    v = mp.matrix([wi / t for wi, t in zip(w, T)])
    normal = A.T * A
    inverse = normal**-1
    c = inverse * (A.T * v)
    r = v - A * c
    rss = sum(x * x for x in r)
    residuals = [1 / (c[0] + c[1] * l + c[2] * l**3) - t for t, l in zip(T, L)]
    out = {
        "points": [[float(t), float(r)] for t, r in rows],
        "letters": [float(x) for x in c],
        "inverseNormal": [[float(inverse[i, j]) for j in range(3)] for i in range(3)],
        "sumOfSquares": float(rss),
        "residualsK": [float(x) for x in residuals],
    }
    if uncertainties:
        out["uncertaintiesK"] = [float(x) for x in uncertainties]
    # scipy, by another road: nonlinear least squares in kelvins from the double-precision answer's neighbourhood.
    x = np.array([float(l) for l in L])
    y = np.array([float(t) for t in T])
    scaled = lambda l, a, b, c: 1 / (a * 1e-3 + b * 1e-4 * l + c * 1e-7 * l**3)
    sigma = np.array([float(s) for s in u])
    best, _ = curve_fit(scaled, x, y, p0=[1.2, 2.4, 1.0], sigma=sigma, xtol=1e-15, ftol=1e-15)
    out["scipyLetters"] = [best[0] * 1e-3, best[1] * 1e-4, best[2] * 1e-7]
    return out


def three(rows):
    L = [mp.log(mp.mpf(r)) for _, r in rows]
    A = mp.matrix([[1, l, l**3] for l in L])
    v = mp.matrix([1 / (mp.mpf(t) + mp.mpf("273.15")) for t, _ in rows])
    return {"points": [[float(t), float(r)] for t, r in rows], "letters": [float(x) for x in mp.lu_solve(A, v)]}


def root(f, low, high):
    return mp.findroot(f, (mp.mpf(low), mp.mpf(high)), solver="anderson", tol=mp.mpf(10) ** -30)


def inverses():
    """ln R for a temperature, from the coefficients as printed."""
    zero = mp.mpf("273.15")
    P = lambda *c: [mp.mpf(x) for x in c]
    laws = {
        "ntc10k3mcd1": (1, P("1.129241e-3", "2.341077e-4", 0, "8.775468e-8")),
        "ntc100k": (1, P("8.271111e-4", "2.08802e-4", 0, "8.0592e-8")),
        "ntc103jl1a": (1, P("1.12766979300187e-3", "2.34444184128213e-4", 0, "8.47692130592308e-8", 0, "1.17512193579615e-11")),
        "ntcMaterial1": (10000, P("3.3539438e-3", "2.5646095e-4", "2.5158166e-6", "1.0503069e-7")),
    }
    out = []
    for name, (ref, p) in laws.items():
        for t in range(-30, 151, 15):
            y = 1 / (t + zero)
            l = root(lambda x: sum(c * x**i for i, c in enumerate(p)) - y, -6, 20)
            out.append([name, t, float(ref * mp.exp(l))])
    return out


def pieces(letter):
    block = re.search(r"letter: '" + letter + r"'.*?inverse: \[", tables, re.S).group(0)
    found = []
    for m in re.finditer(r"fromTempC: (-?\d+),\s+toTempC: (-?\d+),\s+coefficients: \[(.*?)\],(\s+bell: \[(.*?)\])?", block, re.S):
        c = [mp.mpf(x.strip()) for x in m.group(3).split(",") if x.strip()]
        bell = [mp.mpf(x) for x in m.group(5).split(",")] if m.group(5) else None
        found.append((int(m.group(1)), int(m.group(2)), c, bell))
    return found


def emf(parts, t):
    low, high, c, bell = next(p for p in parts if p[0] <= t <= p[1])
    e = sum(x * t**i for i, x in enumerate(c))
    return e + (bell[0] * mp.exp(bell[1] * (t - bell[2]) ** 2) if bell else 0)


def thermocouples():
    out = []
    for letter, values in {
        "K": ["-6", "-5", "-3", "-1", "0.5", "1", "5", "10", "20", "30", "40", "50", "54"],
        "J": ["-8", "-5", "-1", "1", "5", "10", "30", "42", "50", "69"],
        "T": ["-6.2", "-5", "-3", "-1", "1", "5", "10", "20"],
        "N": ["-4.3", "-3", "-1", "1", "5", "20", "30", "47"],
    }.items():
        parts = pieces(letter)
        for v in values:
            wanted = mp.mpf(v)
            low, high = parts[0][0], parts[-1][1]
            for a, b, *_ in parts:
                if emf(parts, a) <= wanted <= emf(parts, b):
                    low, high = a, b
            out.append([letter, float(v), float(root(lambda t: emf(parts, t) - wanted, low, high))])
    return out


def platinum():
    a, b, c = mp.mpf("3.9083e-3"), mp.mpf("-5.775e-7"), mp.mpf("-4.183e-12")
    out = []
    for ohm in ["18.6", "20", "30", "40", "50", "60", "70", "80", "90", "99", "101", "150", "250", "390"]:
        w = mp.mpf(ohm) / 100
        f = lambda t: 1 + a * t + b * t**2 + (c * (t - 100) * t**3 if w < 1 else 0) - w
        out.append([float(ohm), float(root(f, -201, 0) if w < 1 else root(f, 0, 851))])
    return out


def pchip():
    rows = printed("print44031")
    x = np.log([float(r) for _, r in rows])[::-1]
    y = (1 / (np.array([float(t) for t, _ in rows]) + 273.15))[::-1]
    p = PchipInterpolator(x, y)
    at = np.linspace(x[0], x[-1], 23)
    return {
        "x": x.tolist(),
        "y": y.tolist(),
        "slope": p.derivative()(x).tolist(),
        "at": at.tolist(),
        "value": p(at).tolist(),
    }


kettle = [("3", "5180"), ("12", "3520"), ("24", "2160"), ("38", "1262"), ("52", "775"), ("65", "508"), ("78", "342"), ("89", "251"), ("98", "196")]
span = lambda rows, low, high: [row for row in rows if low <= float(row[0]) <= high]
fixture = {
    "made": f"numpy {np.__version__}, scipy {scipy.__version__}, mpmath {mp.__version__}",
    "fits": {
        "2252 from -40 to 150": fit(span(printed("print2252"), -40, 150)),
        "44031": fit(printed("print44031")),
        "10K3MCD1": fit(printed("print10k3mcd1")),
        "coolant 2500": fit(printed("printCoolant2500")),
        "wb473": fit(kernel("wb473")),
        "wf104": fit(kernel("wf104")),
        "b57330v2103": fit(kernel("b57330v2103")),
        "kettle": fit(kettle, ["0.3", "0.3", "0.3", "0.4", "0.4", "0.5", "0.5", "0.6", "0.7"]),
    },
    "threes": [
        three([("0", "7355"), ("50", "811.3"), ("100", "152.8")]),
        three([("0", "7355"), ("25", "2252"), ("70", "394.5")]),
        three([("-40", "75790"), ("25", "2252"), ("100", "152.8")]),
        three([("-40", "75790"), ("25", "2252"), ("150", "41.8")]),
        three([("0", "29490"), ("25", "10000"), ("50", "3893")]),
        three([("-40", "239800"), ("25", "10000"), ("100", "816.8")]),
        three([("0", "29490"), ("25", "10000"), ("70", "1990")]),
        three([("-20", "78910"), ("50", "3893"), ("125", "425.3")]),
    ],
    "inverses": inverses(),
    "thermocouples": thermocouples(),
    "platinum": platinum(),
    "pchip": pchip(),
}
(here / "fixture.json").write_text(json.dumps(fixture, indent=1) + "\n")
