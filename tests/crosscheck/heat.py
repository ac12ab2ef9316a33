#!/usr/bin/env python3
"""Re-solves one front brake's heat as a partial differential equation.

The disc's half thickness by the method of lines, 400 cells, with hat, pads,
piston and caliper as lumps, integrated by SciPy's BDF with a sparse Jacobian by
finite differences. Conductances and capacities are worked out
again from the docstrings of physics/thermal.go and physics page §4.

Two runs of a front brake of the hatchback, in air of 20 °C: a stop from 30 m/s
in 4 s, the power risen in 0.2 s and then falling in proportion to speed from
40 kW at each pad, then 600 s at 15 m/s; and a drag of 3 kW a pad at 12 m/s for 300 s,
then 300 s standing.

/usr/bin/python3 heat.py > heat.csv
Columns: run, t, face, mean, hat, pad_in, pad_out, piston, fluid (°C).
"""
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import lil_matrix

K, RHO, C, LINING_K, LINING_RHO, LINING_C = 52.0, 7200.0, 480.0, 1.0, 2500.0, 1200.0
OUTER = 128e-3
FACE = np.pi * (OUTER**2 - (2 * 104e-3 - OUTER)**2)  # swept
PAD, LINING, PISTON, TYRE = 45e-4, 11e-3, 54e-3, 0.300
MASS = 5.2
RING = min(0.75 * MASS, RHO * FACE * 22e-3)
DEPTH = RING / (2 * RHO * FACE)
SHARE = (K * RHO * C)**0.5 * FACE / ((K * RHO * C)**0.5 * FACE + (LINING_K * LINING_RHO * LINING_C)**0.5 * PAD)
HAT = (MASS - RING) * C
PAD_C = PAD * (18e3 + LINING * LINING_RHO * LINING_C)
FILM = LINING_K / (LINING / 2)
PRESSED, LOOSE = FILM * PAD, FILM * 300 / (FILM + 300) * PAD
FLUID_C = 620e3 * np.pi / 4 * PISTON**2 + 60e-6 * 1050 * 2300
N, AIR, SIGMA = 400, 20.0, 5.670374419e-8
DX = DEPTH / N


def radiation(t):
    """W/m² from a face of emissivity 0.5."""
    return 0.5 * SIGMA * ((t + 273.15)**4 - (AIR + 273.15)**4)


def rates(y, power, pressed, speed):
    disc, (hat, pi, po, piston, fluid) = y[:N], y[N:]
    turning = speed / TYRE
    convect = 8.0 + 2.2 * speed
    vanes = 1.2 * (8.0 + 0.737 * turning)
    g = PRESSED if pressed else LOOSE
    # The rubbed face: what comes in is what the first half cell carries off.
    face = disc[0]
    for _ in range(30):
        into = 2 * SHARE * power - g * (face - pi) - g * (face - po)
        miss = K * (face - disc[0]) / (DX / 2) - into / (2 * FACE) + convect * (face - AIR) + radiation(face)
        slope = 2 * K / DX + 2 * g / (2 * FACE) + convect + 2 * SIGMA * (face + 273.15)**3
        face -= miss / slope
        if abs(miss / slope) < 1e-11:
            break
    q_face = K * (face - disc[0]) / (DX / 2)
    # The mid-plane: vanes and the neck to the hat, again through half a cell.
    neck = 5.0 * (disc[-1] - hat)
    mid = vanes * 2 * K / DX / (vanes + 2 * K / DX) * (disc[-1] - AIR) + neck / (2 * FACE)
    q = np.empty(N + 1)
    q[0], q[1:N], q[N] = q_face, K * (disc[:-1] - disc[1:]) / DX, mid
    d = np.empty(N + 5)
    d[:N] = (q[:-1] - q[1:]) / (RHO * C * DX)
    rim, bore, finger = 8.0 * PISTON * (pi - piston), 16.0 * PISTON * (piston - fluid), 6.0 * PISTON * (po - fluid)
    size = PISTON / 54e-3
    d[N] = (neck - 1.2 * (hat - AIR)) / HAT
    d[N + 1] = (g * (face - pi) + (1 - SHARE) * power - 25.0 * PAD * (pi - AIR) - rim) / PAD_C
    d[N + 2] = (g * (face - po) + (1 - SHARE) * power - 25.0 * PAD * (po - AIR) - finger) / PAD_C
    d[N + 3] = (rim - bore) / (1.8e3 * PISTON)
    d[N + 4] = (bore + finger - (0.4 * size + 0.11 * size * speed) * (fluid - AIR)) / FLUID_C
    return d, face


PATTERN = lil_matrix((N + 5, N + 5))
for i in range(N):
    PATTERN[i, max(0, i - 1):min(N, i + 2)] = 1
PATTERN[N:, N:] = 1
PATTERN[0, N:] = PATTERN[N:, 0] = 1
PATTERN[N - 1, N] = PATTERN[N, N - 1] = 1

STOP = [  # until, power of a pad, pressed, speed: functions of time
    (0.2, lambda t: 40e3 * min(1, t / 0.2) * (1 - t / 4), True, lambda t: 30 * (1 - t / 4)),
    (4.0, lambda t: 40e3 * min(1, t / 0.2) * (1 - t / 4), True, lambda t: 30 * (1 - t / 4)),
    (604.0, lambda t: 0.0, False, lambda t: 15.0),
]
DRAG = [(300.0, lambda t: 3e3, True, lambda t: 12.0), (600.0, lambda t: 0.0, False, lambda t: 0.0)]
TIMES = [[0.1, 0.2, 0.3, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 7, 10, 20, 40, 70, 100, 150, 200, 300, 400, 500, 604],
         [1, 5, 10, 30, 60, 100, 150, 200, 250, 300, 305, 310, 330, 360, 400, 450, 500, 600]]

if __name__ == "__main__":
    print("run,t,face,mean,hat,pad_in,pad_out,piston,fluid")
    for number, parts in enumerate((STOP, DRAG)):
        y, t = np.full(N + 5, AIR), 0.0
        for until, power, pressed, speed in parts:
            at = [x for x in TIMES[number] if t < x <= until]
            assert at[-1] == until
            sol = solve_ivp(lambda s, z: rates(z, power(s), pressed, speed(s))[0], (t, until), y, method="BDF",
                            rtol=1e-8, atol=1e-7, t_eval=at, jac_sparsity=PATTERN.tocsc())
            if not sol.success:
                raise SystemExit(sol.message)
            for when, z in zip(sol.t, sol.y.T):
                face = rates(z, power(when), pressed, speed(when))[1]
                print(number, when, *(f"{v:.8g}" for v in (face, z[:N].mean(), *z[N:])), sep=",")
            y, t = sol.y[:, -1], until
