"""Independent answers for filters on a level that sways: scipy's lfilter and medfilt on sampled waves.

A wave goes through the filter until it is steady; its amplitude is then fitted by least squares (linear filters), or the
largest value over many phases is taken (medians). Run with Python 3, numpy and scipy; it writes slosh.json beside
itself, which prettier then lays out.
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy.signal import lfilter, medfilt

here = Path(__file__).parent
rng = np.random.default_rng(22)


def amplitude(b, a, sample, period, skip):
    n = np.arange(skip + 4000)
    w = 2 * np.pi * sample / period
    y = lfilter(b, a, np.sin(w * n))[skip:]
    n = n[skip:]
    (p, q), *_ = np.linalg.lstsq(np.stack([np.sin(w * n), np.cos(w * n)], axis=1), y, rcond=None)
    return float(np.hypot(p, q))


first, average, median, step = [], [], [], []
for _ in range(12):
    old = float(np.round(1 - 10 ** rng.uniform(-2.2, -0.2), 4))
    sample = float(np.round(10 ** rng.uniform(-2, 0), 4))
    period = float(np.round(sample * rng.uniform(2.5, 60), 4))
    skip = int(40 / -np.log(old)) + 10
    first.append({"old": old, "sampleS": sample, "periodS": period, "share": amplitude([1 - old], [1, -old], sample, period, skip)})
    # How long a step takes to come within a share of its end, and how far a ramp is behind.
    rest = float(np.round(rng.uniform(0.01, 0.5), 3))
    left = 1 - lfilter([1 - old], [1, -old], np.ones(20000))
    ramp = np.arange(skip + 2000) * sample
    behind = float((ramp - lfilter([1 - old], [1, -old], ramp))[-1])
    step.append({"old": old, "sampleS": sample, "rest": rest, "samples": int(np.argmax(left <= rest) + 1), "behindS": behind})
for n in (2, 3, 5, 8, 13, 21, 40):
    sample, short, long = 0.1, 1.0, 2.6
    worst = max(amplitude(np.ones(n) / n, [1], sample, p, n + 5) for p in np.linspace(short, long, 400))
    average.append({"count": n, "share": worst})
for n in (3, 7, 11, 15, 19, 25, 31, 41, 61):
    sample, short, long = 0.1, 1.0, 2.6
    worst = 0.0
    for p in np.linspace(short, long, 160):
        for phase in np.linspace(0, 2 * np.pi * sample / p, 9):
            x = np.sin(2 * np.pi * sample / p * np.arange(600) + phase)
            worst = max(worst, float(np.max(medfilt(x, n)[n:-n])))
    median.append({"count": n, "share": worst})

(here / "slosh.json").write_text(
    json.dumps({"scipy": scipy.__version__, "first": first, "average": average, "median": median, "step": step})
)
