#!/usr/bin/env python3
"""Re-solves pedal, cylinder, lines and calipers as a stiff ODE (Radau).

The balances of the physics page §1–§3, written afresh in time instead of in
steps. States: strokes and pressures of both chambers, anchor of the rod's
friction, and of each wheel pressure, gas and its warmth, fluid lost, piston,
body, tilt, bridge and five friction anchors. Three idealisations make an ODE of
them, each far below the figures' tolerance: a chamber gives 2e-17 m³/Pa (a
wheel 5e-14), tilt and bridge follow within 20 µs, an anchor that is dragged
along lags by 10 µs. Stops are springs of 1 GN/m.

Run with Debian's python3-scipy: /usr/bin/python3 hydraulics.py > hydraulics.csv
Columns: case, t, p1, p2, s1, s2, pedal, four wheel pressures, four piston
travels, all fluid lost (SI).
"""
import numpy as np
from scipy.integrate import solve_ivp

import caliper
from hatchback import *

TAU, CHAMBER, STOP = 1e-5, 2e-17, 1e9
VOID, VOID_C = 3e3 - ATM, 1e-9


def orifice(area, p, smooth):
    return CD * area * np.sqrt(2 / RHO) * p / np.sqrt(np.abs(p) + smooth)


class System:
    def __init__(self, foot, air=(0, 0, 0, 0), leak=(0, 0, 0, 0), hold=(0, 0, 0, 0), back=(1, 1, 1, 1), pins=None):
        self.foot, self.leak = foot, np.array(leak, float)
        self.hold, self.back = np.array(hold, float), np.array(back, float)
        self.fr = {k: v.copy() for k, v in caliper.FRICTION.items()}
        for w, (u, l) in (pins or {}).items():
            self.fr["pu"][w], self.fr["pl"][w] = u, l
        self.air = np.array(air, float)

    def start(self):
        y = np.zeros((13, 4))
        for w in range(4):
            q, anchors = caliper.released(w, self.fr)
            y[4:8, w], y[8:13, w] = q, anchors
        y[1] = self.air
        head = np.array([0, 0, 0, 0, ROD_F / ROD_K])
        return np.concatenate([head, y.ravel()])

    def rates(self, t, z, cosine=1.0):
        s, p, anchor = z[0:2], z[2:4], z[4]
        v = z[5:57].reshape(13, 4)
        pw, gas, warm, x = v[0], v[1], v[2], v[4:8]
        force = boost(self.foot(t))
        grip = ROD_F + ROD_SHARE * force
        f = np.clip(ROD_K * (s[0] + s[1] - anchor), -grip, grip)
        contact = -STOP * np.minimum(0, s) - STOP * np.maximum(0, s - STROKE)
        ds = (ETA * force + grip - f - PRELOAD - SPRING * s - p * MASTER + contact) / DAMP
        # ports close as the rod takes up its free travel, then within 0.05 mm
        taken = min(1.0, max(0.0, ETA * force / PRELOAD.min()))
        share = np.maximum(0, 1 - np.maximum(0, s) / LAP)
        supply = orifice(PORT * (1 - taken) * share, -p, 1e3) - np.minimum(0, p) / CUP
        # lines: the reducing valve, then laminar flow
        pc = p[CIRCUIT]
        out = np.where((np.arange(4) >= 2) & (pc > KNEE), KNEE + SLOPE * (pc - KNEE), pc)
        d = out - pw
        q = np.where(d >= 0, d, np.minimum(0, d + self.hold) / self.back) / LINE
        drawn = np.array([q[CIRCUIT == 0].sum(), q[CIRCUIT == 1].sum()])
        dp = (MASTER * ds + supply - drawn) / (CHAMBER + np.where(p < VOID, VOID_C, 0))
        # wheels
        leak = orifice(self.leak, pw, 100)
        left, n, over = caliper.forces(x, v[8:13], pw, cosine, self.fr)
        self.n = n
        dx = np.array([left[0] / SEAL_DRAG, left[1] / GREASE, left[2] / 1e-3, left[3] / 1e3])
        P = np.maximum(500.0, pw + ATM)
        cold = gas * ATM / P
        vol = cold * (1 + warm)
        give = SWELL + FLUID / BULK + vol / (GAMMA * P) + np.where(pw < VOID, VOID_C, 0)
        dpw = (q - leak - AREA * dx[0] - cold * warm / COOL) / give
        dgas = np.where(leak < 0, -leak * P / ATM, 0)
        dwarm = (1 + warm) * (1 - 1 / GAMMA) * dpw / P - warm / COOL
        lost = np.where(leak > 0, leak, 0)
        dv = np.concatenate([[dpw, dgas, dwarm, lost], dx, over / TAU])
        da = (s[0] + s[1] - anchor - f / ROD_K) / TAU
        return np.concatenate([ds, dp, [da], dv.ravel()])

    def jacobian(self, t, z, cosine=1.0):
        """By differences: a wheel acts on itself and, through its line, on its own
        chamber; so all wheels (for pressures, one of each circuit) move at once."""
        h, base = 1e-6 * SIZE, self.rates(t, z, cosine)
        j = np.zeros((57, 57))
        for c in range(5):
            at = z.copy()
            at[c] += h[c]
            j[:, c] = (self.rates(t, at, cosine) - base) / h[c]
        for k in range(13):
            for wheels in ([0, 1], [2, 3]) if k == 0 else ([0, 1, 2, 3],):
                at = z.copy()
                for w in wheels:
                    at[5 + 4 * k + w] += h[5 + 4 * k + w]
                d = self.rates(t, at, cosine) - base
                for w in wheels:
                    c = 5 + 4 * k + w
                    j[5 + w::4, c] = d[5 + w::4] / h[c]
                    if k == 0:
                        j[2 + CIRCUIT[w], c] = d[2 + CIRCUIT[w]] / h[c]
        return j

    def pedal(self, t, z):
        push = ETA * boost(self.foot(t))
        s = z[0] + z[1]
        taken = 1.0 if push >= PRELOAD.min() else max(min(1, s / LAP), push / PRELOAD.min())
        return RATIO * (FREE * taken + max(0.0, s))


SIZE = np.concatenate([[1e-3] * 2, [1e5] * 2, [1e-3], [1e5] * 4, [1e-7] * 4, [1e-2] * 4, [1e-8] * 4,
                       [1e-4] * 8, [1e-4] * 4, [1e-5] * 4, [1e-4] * 20])


def press(t):
    """150 N in 0.2 s, held for 0.8 s, let go in 0.1 s."""
    return 150 * max(0.0, min(t / 0.2, 1.0, (1.1 - t) / 0.1))


CASES = [
    dict(), dict(air=(2e-6, 0, 0, 0)), dict(leak=(0, 0, 2e-8, 0)),
    dict(air=(0, 0, 0, 1e-6), leak=(0, 5e-8, 0, 0)), dict(hold=(1e6, 0, 0, 0), back=(30, 1, 1, 1)),
    dict(pins={0: (2e4, PIN_F), 3: (300.0, 300.0)}),
]


def run(number, case):
    sys_ = System(press, **case)
    z, lines = sys_.start(), []
    times = np.round(np.concatenate([np.arange(0.01, 0.3, 0.01), np.arange(0.3, 1.0, 0.05), np.arange(1.0, 1.6, 0.01)]), 3)
    t = 0.0
    # Corners of the foot. Leaking cars are followed to the end of the hold: once the
    # pedal is let go a hole sucks air in, and Radau hardly moves on.
    for stop in (0.2, 1.0) if sys_.leak.any() else (0.2, 1.0, 1.1, 1.59):
        at = times[(times > t) & (times <= stop)]
        sol = solve_ivp(sys_.rates, (t, stop), z, method="Radau", rtol=RTOL, atol=RTOL * SIZE, t_eval=at, jac=sys_.jacobian)
        if not sol.success:
            raise SystemExit(sol.message)
        for when, y in zip(sol.t, sol.y.T):
            v = y[5:57].reshape(13, 4)
            lines.append([number, when, y[2], y[3], y[0], y[1], sys_.pedal(when, y), *v[0], *v[4], v[3].sum()])
        z, t = sol.y[:, -1], stop
    return lines


RTOL = 1e-5
if __name__ == "__main__":
    from multiprocessing import Pool
    names = ["case", "t", "p1", "p2", "s1", "s2", "pedal"] + [f"{k}_{w}" for k in ("p", "x") for w in ("fl", "fr", "rl", "rr")] + ["lost"]
    with Pool(2) as pool:
        done = pool.starmap(run, enumerate(CASES))
    print(",".join(names))
    for row in sum(done, []):
        print(*(f"{v:.8g}" for v in row), sep=",")
