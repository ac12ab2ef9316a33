"""A brake's heat as a partial differential equation, by the method of lines.

The disc's half thickness in 400 cells, with hat, pads, piston and caliper as
lumps. Conductances and capacities are worked out again from the docstrings of
physics/thermal.go and physics page §4.
"""
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import lil_matrix

K, RHO, C, LINING_K, LINING_RHO, LINING_C = 54.0, 7200.0, 480.0, 1.0, 2500.0, 1200.0
TYRE, AIR, SIGMA = 0.300, 20.0, 5.670374419e-8
N = 400


def radiation(t):
    """W/m² from a face of emissivity 0.5."""
    return 0.5 * SIGMA * ((t + 273.15)**4 - (AIR + 273.15)**4)


class Brake:
    def __init__(self, outer, middle, thick, mass, vented, pad, lining, piston, fluid):
        self.face = np.pi * (outer**2 - (2 * middle - outer)**2)  # swept
        ring = min(0.75 * mass, RHO * self.face * thick)
        self.dx = ring / (2 * RHO * self.face) / N
        iron, pads = (K * RHO * C)**0.5 * self.face, (LINING_K * LINING_RHO * LINING_C)**0.5 * pad
        self.share = iron / (iron + pads)
        self.hat = (mass - ring) * C
        self.vented, self.pad, self.piston = vented, pad, piston
        self.pad_c = pad * (18e3 + lining * LINING_RHO * LINING_C)
        film = LINING_K / (lining / 2)
        self.pressed, self.loose = film * pad, film * 300 / (film + 300) * pad
        self.fluid_c = 620e3 * np.pi / 4 * piston**2 + fluid * 1050 * 2300

    def rates(self, y, power, pressed, speed):
        """Rates of change and the face's temperature; power of inner and outer pad [W]."""
        disc, (hat, pi, po, piston, fluid) = y[:N], y[N:]
        half = 2 * K / self.dx
        convect = 4.0 + 8.0 * max(speed, 0.0)**0.625
        vanes = 1.2 * max(4.0, 1.3 + 0.7175 * speed / TYRE) if self.vented else 0.0
        g = self.pressed if pressed else self.loose
        # The rubbed face: what comes in is what the first half cell carries off.
        face = disc[0]
        for _ in range(30):
            into = self.share * sum(power) - g * (face - pi) - g * (face - po)
            miss = half * (face - disc[0]) - into / (2 * self.face) + convect * (face - AIR) + radiation(face)
            step = miss / (half + g / self.face + convect + 2 * SIGMA * (face + 273.15)**3)
            face -= step
            if abs(step) < 1e-11:
                break
        # The mid-plane: vanes, again through half a cell, and the neck to the hat.
        neck = 5.0 * (disc[-1] - hat)
        q = np.empty(N + 1)
        q[0], q[1:N] = half * (face - disc[0]), K * (disc[:-1] - disc[1:]) / self.dx
        q[N] = vanes * half / (vanes + half) * (disc[-1] - AIR) + neck / (2 * self.face)
        d = np.empty(N + 5)
        d[:N] = (q[:-1] - q[1:]) / (RHO * C * self.dx)
        rim, bore, finger = (k * self.piston * (a - b) for k, a, b in ((8.0, pi, piston), (16.0, piston, fluid), (6.0, po, fluid)))
        d[N] = (neck - 1.2 * (hat - AIR)) / self.hat
        d[N + 1] = (g * (face - pi) + (1 - self.share) * power[0] - 25.0 * self.pad * (pi - AIR) - rim) / self.pad_c
        d[N + 2] = (g * (face - po) + (1 - self.share) * power[1] - 25.0 * self.pad * (po - AIR) - finger) / self.pad_c
        d[N + 3] = (rim - bore) / (1.8e3 * self.piston)
        d[N + 4] = (bore + finger - (0.4 + 0.11 * speed) * self.piston / 54e-3 * (fluid - AIR)) / self.fluid_c
        return d, face

    def run(self, parts, times):
        """Temperatures (face, mean, hat, pads, piston, fluid) at times; parts are
        (until, power of both pads, pressed, speed), power and speed of time."""
        y, t, lines = np.full(N + 5, AIR), 0.0, []
        for until, power, pressed, speed in parts:
            at = [x for x in times if t < x <= until]
            assert at[-1] == until
            sol = solve_ivp(lambda s, z: self.rates(z, power(s), pressed, speed(s))[0], (t, until), y, method="BDF",
                            rtol=1e-8, atol=1e-7, t_eval=at, jac_sparsity=PATTERN)
            if not sol.success:
                raise SystemExit(sol.message)
            for when, z in zip(sol.t, sol.y.T):
                face = self.rates(z, power(when), pressed, speed(when))[1]
                lines.append((when, face, z[:N].mean(), *z[N:]))
            y, t = sol.y[:, -1], until
        return lines


def links():
    p = lil_matrix((N + 5, N + 5))
    for i in range(N):
        p[i, max(0, i - 1):min(N, i + 2)] = 1
    p[N:, N:] = 1
    p[0, N:] = p[N:, 0] = 1
    p[N - 1, N] = p[N, N - 1] = 1
    return p.tocsc()


PATTERN = links()
FRONT_BRAKE = Brake(128e-3, 104e-3, 22e-3, 5.2, True, 45e-4, 11e-3, 54e-3, 60e-6)
REAR_BRAKE = Brake(122.5e-3, 101e-3, 9e-3, 3.6, False, 28e-4, 9e-3, 34e-3, 45e-6)
