#!/usr/bin/env python3
"""Times SciPy on the equations of hydraulics.py and corner.py at a given error.

The first tenth of a second of hydraulics.py's press, its first car, by SciPy's
stiff solver Radau at a ladder of tolerances, with the sparse differences of
System.jacobian (BDF comes no further than 10 ms in the time); and the pressures of
corner.py's cases, each from the place before, by MINPACK's hybrid Powell method.
What a run errs is held against the kept figures: for the press the root mean
square of a kind of quantity as a share of the kind's greatest, worst kind; for the
calipers the mean difference as a share of the greatest of its kind. Seconds are of
the processor, without finding where a run begins.

/usr/bin/python3 speed.py PRESS CORNER > speed.csv     errors [1] to reach
Columns: what, method, tolerance, error [1], seconds (a press, a pressure). The
last line of each kind is the fastest that errs no more than wanted, or, where
none does, the one that errs least.
"""
import csv
import io
import sys
import time
from contextlib import redirect_stdout
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import root

import hydraulics

HERE = Path(__file__).parent
UNTIL = 0.1  # [s]
KINDS = [(2, 4), (4, 6), (6, 7), (7, 11), (11, 15)]


def figures(name):
    with open(HERE / name) as f:
        return np.array([[float(v) for v in row] for row in list(csv.reader(f))[1:]])


def timed(run):
    begin = time.process_time()
    out = run()
    return out, time.process_time() - begin


def press(method, rtol):
    """The first car's kept moments, and the seconds they took."""
    kept = figures("hydraulics.csv")
    kept = kept[(kept[:, 0] == 0) & (kept[:, 1] <= UNTIL)]
    start = hydraulics.System(hydraulics.press).start()

    def run():
        car = hydraulics.System(hydraulics.press)
        sol = solve_ivp(car.rates, (0, UNTIL), start, method=method, rtol=rtol, atol=rtol * hydraulics.SIZE, t_eval=kept[:, 1], jac=car.jacobian)
        lines = []
        for when, y in zip(sol.t, sol.y.T):
            v = y[5:57].reshape(13, 4)
            lines.append([0, when, y[2], y[3], y[0], y[1], car.pedal(when, y), *v[0], *v[4]])
        return np.array(lines)

    got, seconds = timed(run)
    worst = max(np.sqrt(np.mean((got[:, a:b] - kept[:, a:b])**2)) / np.abs(kept[:, a:b]).max() for a, b in KINDS)
    return worst, seconds


def corners(method, tol):
    """All cases of corner.csv, warm, and the seconds a pressure took."""
    with redirect_stdout(io.StringIO()):
        import corner
    kept = figures("corner.csv")

    def run():
        out, last = [], -1
        for r in kept:
            if r[0] != last:
                last, q, anc = r[0], np.zeros(4), dict(s=0.0, u=0.0, l=0.0, i=0.0, o=0.0)
            c = dict(zip(("pu", "pl", "fs", "ks", "ei", "eo", "wiu", "wil", "wou", "wol"), r[1:11]))
            p = r[11]
            q = root(lambda z: corner.residual(z * corner.SCALE, p, c, anc)[0], (q + 1e-9) / corner.SCALE, method=method, tol=tol).x * corner.SCALE
            x, y, th, e = q
            _, (n_i, n_o) = corner.residual(q, p, c, anc)
            anc = dict(s=corner.slip(anc["s"], c["ks"], c["fs"] + corner.CS * p, x), u=corner.slip(anc["u"], corner.KPIN, c["pu"], y + corner.A * th),
                       l=corner.slip(anc["l"], corner.KPIN, c["pl"], y - corner.A * th), i=corner.slip(anc["i"], corner.KEAR, c["ei"], x - y),
                       o=corner.slip(anc["o"], corner.KEAR, c["eo"], y - e))
            out.append([*n_i, *n_o, *q])
        return np.array(out)

    got, seconds = timed(run)
    most = np.abs(kept[:, 12:20]).max(axis=0)
    most[:4] = most[:4].max()
    return (np.abs(got - kept[:, 12:20]) / most).mean(), seconds / len(kept)


def ladder(what, wanted, tries, run):
    """Prints every try, then the one that counts again."""
    done = [(what, *how[-2:], *run(*how)) for how in tries]
    good = [d for d in done if d[3] <= wanted]
    best = min(good, key=lambda d: d[4]) if good else min(done, key=lambda d: d[3])
    for line in done + [best]:
        print(*(f"{v:.3g}" if isinstance(v, float) else v for v in line), sep=",", flush=True)


if __name__ == "__main__":
    press_error, corner_error = map(float, sys.argv[1:])
    print("what,method,tolerance,error,seconds")
    ladder("corner", corner_error, [("hybr", tol) for tol in (1e-2, 1e-3, 1e-4, 1e-6, 1e-8, 1e-10)], corners)
    ladder("press", press_error, [("Radau", tol) for tol in (1e-2, 3e-3, 1e-3)], press)
