"""Four calipers at once: forces of the balance, and a quasi-static settling by
SciPy's root finder for where a run begins."""
import numpy as np
from scipy.optimize import root

from hatchback import *

# what a wheel's condition may change, arrays of four
FRICTION = dict(pu=np.full(4, PIN_F), pl=np.full(4, PIN_F))


def clamp(k, f, u):
    return np.clip(k * u, -f, f)


def half(k1, k3, d):
    d = np.maximum(d, 0.0)
    return 0.5 * (k1 * d + k3 * d**3)


def forces(q, anchors, p, cosine, fr, w=slice(None)):
    """Unbalanced forces on piston, body, tilt [N m] and bridge; pad forces; how
    far every friction element is stretched beyond its limit [m]."""
    x, y, th, e = q
    a, b = A[w], B[w]
    seal_f = SEAL_F + GRIP * np.maximum(0.0, p)
    # how each element is stretched: seal, pins upper and lower, ears inner and outer
    u = np.array([x, y + a * th, y - a * th, x - y, y - e]) - anchors
    k = np.array([SEAL_K, PIN_K, PIN_K, EAR_K, EAR_K])[:, None] if np.ndim(x) else np.array([SEAL_K, PIN_K, PIN_K, EAR_K, EAR_K])
    ear = EAR_F + 0 * x
    limit = np.array([seal_f, fr["pu"][w], fr["pl"][w], ear, ear])
    f = clamp(k, limit, u)
    face = RUNOUT * cosine
    ni = [half(K1[w], K3[w], x - (y + s * KAPPA * b * th) - GAP - face) for s in (1, -1)]
    no = [half(K1[w], K3[w], (y + s * b * th) - e - GAP + face) for s in (1, -1)]
    n_i, n_o = ni[0] + ni[1], no[0] + no[1]
    boots = (BOOT * (y + a * th), BOOT * (y - a * th))
    left = np.array([
        p * AREA[w] - f[0] - n_i - f[3],
        n_i + f[3] - n_o - f[4] - f[1] - f[2] - boots[0] - boots[1],
        KAPPA * b * (ni[0] - ni[1]) - b * (no[0] - no[1]) - a * (f[1] - f[2]) - TILT * th - a * (boots[0] - boots[1]),
        n_o + f[4] - BRIDGE[w] * e,
    ])
    return left, (n_i, n_o), u - f / k


SCALE = np.array([1e-4, 1e-4, 1e-3, 1e-5])


def settle(w, q, anchors, p, cosine, fr):
    """One wheel at rest under p: MINPACK's hybrid Powell method."""
    def miss(z):
        left = forces(z * SCALE, anchors, p, cosine, fr, w)[0]
        return left / np.array([1, 1, A[w], 1])
    best = None
    for extra in [np.zeros(4)] + list(np.random.default_rng(7).normal(size=(60, 4)) * 0.5):
        sol = root(miss, q / SCALE + extra, method="hybr", tol=1e-13)
        r = np.max(np.abs(miss(sol.x)))
        if best is None or r < best[0]:
            best = (r, sol.x * SCALE)
        if r < 1e-5:
            break
    if best[0] > 0.05:
        raise SystemExit(f"no balance at {p} Pa: {best[0]} N")
    _, n, over = forces(best[1], anchors, p, cosine, fr, w)
    return best[1], anchors + over, n


def released(w, fr, cosine=1.0):
    """Taken 0 → 8 → 0 MPa once, then met by the disc at rest."""
    q, anchors = np.zeros(4), np.zeros(5)
    for n in range(1, 33):
        q, anchors, _ = settle(w, q, anchors, 0.5e6 * min(n, 32 - n), 0.0, fr)
    if cosine is not None:
        q, anchors, _ = settle(w, q, anchors, 0.0, cosine, fr)
    return q, anchors
