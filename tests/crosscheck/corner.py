#!/usr/bin/env python3
"""Re-solves the floating caliper with a general-purpose optimiser.

The balance of physics.Corner, written afresh from the equations and solved by
SciPy's root finder (MINPACK's hybrid Powell method, no derivatives given). Run
with Debian's python3-scipy: `/usr/bin/python3 corner.py > corner.csv`.

Each case is a path of pressures from rest; friction anchors are moved after
each accepted pressure, as the equations say. One line a pressure:
case, pin_upper, pin_lower, seal_n, seal_k, ear_in, ear_out, wear_iu, wear_il,
wear_ou, wear_ol, p, N_iu, N_il, N_ou, N_ol, x, y, tilt, bridge (SI).
"""
import sys
import numpy as np
from scipy.optimize import root

D, K1, K3, KB = 54e-3, 60e6, 2.5e15, 120e6
AREA = np.pi / 4 * D * D
CS, KPIN, A, B, KAPPA = 55e-6, 8e6, 65e-3, 28e-3, 0.30
BOOT, KT, GAP, KEAR = 300.0, 50.0, 0.12e-3, 20e6


def clamp(k, f, u):
    return np.clip(k * u, -f, f)


def half(d):
    d = max(d, 0.0)
    return 0.5 * (K1 * d + K3 * d**3)


def residual(q, p, c, anc):
    x, y, th, e = q
    n_i = [half(x - (y + s * KAPPA * B * th) - GAP - w) for s, w in ((1, c["wiu"]), (-1, c["wil"]))]
    n_o = [half((y + s * B * th) - e - GAP - w) for s, w in ((1, c["wou"]), (-1, c["wol"]))]
    seal = clamp(c["ks"], c["fs"] + CS * p, x - anc["s"])
    pu, pl = clamp(KPIN, c["pu"], y + A * th - anc["u"]), clamp(KPIN, c["pl"], y - A * th - anc["l"])
    bu, bl = BOOT * (y + A * th), BOOT * (y - A * th)
    ei, eo = clamp(KEAR, c["ei"], x - y - anc["i"]), clamp(KEAR, c["eo"], y - e - anc["o"])
    ni, no = sum(n_i), sum(n_o)
    return np.array([
        p * AREA - seal - ni - ei,
        ni + ei - no - eo - pu - pl - bu - bl,
        (KAPPA * B * (n_i[0] - n_i[1]) - B * (n_o[0] - n_o[1]) - A * (pu - pl) - KT * th - A * (bu - bl)) / A,
        no + eo - KB * e,
    ]), (n_i, n_o)


SCALE = np.array([1e-4, 1e-4, 1e-3, 1e-5])


def solve(q, p, c, anc):
    """Root of the balance by MINPACK's hybrid Powell method, from several starts; the energy is convex, so any root is the root."""
    best = None
    starts = [q, q + 1e-5, q * 1.01]
    for extra in np.random.default_rng(7).normal(size=(60, 4)):
        starts.append(q + extra * SCALE * 0.5)
    for s in starts:
        sol = root(lambda z: residual(z * SCALE, p, c, anc)[0], s / SCALE, method="hybr", tol=1e-13)
        r = np.max(np.abs(residual(sol.x * SCALE, p, c, anc)[0]))
        if best is None or r < best[0]:
            best = (r, sol.x * SCALE)
        if r < 1e-5:
            break
    if best[0] > 0.02:
        sys.exit(f"no root: residual {best[0]} N at {p} Pa, {c}")
    return best[1]


def slip(anchor, k, f, u):
    d = u - anchor
    if d > f / k:
        return u - f / k
    if d < -f / k:
        return u + f / k
    return anchor


CASES = [
    dict(), dict(pu=200.0, pl=200.0), dict(pu=400.0, pl=400.0), dict(pu=1000.0, pl=1000.0), dict(pu=20000.0),
    dict(pl=20000.0), dict(pu=20000.0, pl=20000.0), dict(fs=2500.0, ks=20e6), dict(fs=600.0, ks=5e6),
    dict(ei=300.0, eo=300.0), dict(eo=2000.0), dict(ei=1500.0), dict(wiu=2e-4, wil=1e-4, wou=3e-4, wol=1e-4),
    dict(pu=3000.0, pl=100.0, ei=50.0, eo=50.0, wou=1e-4),
]
BASE = dict(pu=15.0, pl=15.0, fs=120.0, ks=0.9e6, ei=5.0, eo=5.0, wiu=0.0, wil=0.0, wou=0.0, wol=0.0)
PATH = [0.5, 1, 2, 3, 4.5, 6, 8, 6, 4, 2.5, 1.5, 1, 0.5, 0.25, 0.1, 2, 5]

print("case,pin_upper,pin_lower,seal_n,seal_k,ear_in,ear_out,wear_iu,wear_il,wear_ou,wear_ol,p,n_iu,n_il,n_ou,n_ol,x,y,tilt,bridge")
for number, change in enumerate(CASES):
    c = {**BASE, **change}
    anc = dict(s=0.0, u=0.0, l=0.0, i=0.0, o=0.0)
    q = np.zeros(4)
    for mpa in PATH:
        p = mpa * 1e6
        q = solve(q, p, c, anc)
        x, y, th, e = q
        _, (n_i, n_o) = residual(q, p, c, anc)
        anc["s"] = slip(anc["s"], c["ks"], c["fs"] + CS * p, x)
        anc["u"] = slip(anc["u"], KPIN, c["pu"], y + A * th)
        anc["l"] = slip(anc["l"], KPIN, c["pl"], y - A * th)
        anc["i"] = slip(anc["i"], KEAR, c["ei"], x - y)
        anc["o"] = slip(anc["o"], KEAR, c["eo"], y - e)
        print(number, *(repr(float(v)) for v in (c["pu"], c["pl"], c["fs"], c["ks"], c["ei"], c["eo"], c["wiu"], c["wil"], c["wou"], c["wol"],
              p, *n_i, *n_o, x, y, th, e)), sep=",")
