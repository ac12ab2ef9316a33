#!/usr/bin/env python3
"""Three descents of 8 % at 30 km/h on the brakes alone, 1, 2 and 3 km.

The braking force is what the slope gives less rolling and air. How the wheels
share it: both chambers by their springs and the volume that their wheels take,
each caliper by its quasi-static balance (caliper.py), the turning disc met at
its highest, lowest and middle place. Temperatures from heat.py.

/usr/bin/python3 descent.py > descent.csv
Columns: km, wheel, face, mean, hat, pad_in, pad_out, piston, fluid (°C).
"""
import numpy as np
from scipy.optimize import brentq

import caliper
from hatchback import *
from heat import FRONT_BRAKE, REAR_BRAKE

SPEED, GRADE = 30 / 3.6, 0.08
SIN, COS = np.array([GRADE, 1]) / np.hypot(1, GRADE)
WANT = MASS * G * (SIN - ROLLING * COS) - 0.5 * AIR * DRAG_AREA * SPEED**2


def pressed(w, p):
    """Pad forces under p with the disc turning, and the volume the cavity took."""
    q, anchors = caliper.released(w, caliper.FRICTION)
    from_x = q[0]
    for share in (0.25, 0.5, 0.75, 1.0):
        q, anchors, _ = caliper.settle(w, q, anchors, share * p, 0.0, caliper.FRICTION)
    for _ in range(4):
        for cosine in (1.0, -1.0, 0.0):
            q, anchors, n = caliper.settle(w, q, anchors, p, cosine, caliper.FRICTION)
    return n, AREA[w] * (q[0] - from_x) + SWELL[w] * p + FLUID[w] * p / BULK


def chamber(i, force):
    """Pressure of a chamber that the rod pushes with force; below the valves' knee."""
    def miss(p):
        took = sum(pressed(w, p)[1] for w in range(4) if CIRCUIT[w] == i)
        return ETA * force - PRELOAD[i] - SPRING[i] * took / MASTER - p * MASTER
    return brentq(miss, 1e5, KNEE, rtol=1e-7)


def pads(force):
    p = [chamber(0, force), chamber(1, force)]
    return [pressed(w, p[CIRCUIT[w]])[0] for w in range(4)]


def held(force):
    return sum(MU * RE[w] / RADIUS * sum(n) for w, n in enumerate(pads(force))) - WANT


force = brentq(held, 200, 600, rtol=1e-6)
share = pads(force)
print("km,wheel,face,mean,hat,pad_in,pad_out,piston,fluid")
for km in (1, 2, 3):
    seconds = 1 + np.ceil(1000 * km / SPEED)  # one second more, in which the foot comes down
    for w in range(4):
        power = np.array(share[w]) * MU * RE[w] * SPEED / RADIUS
        brake = FRONT_BRAKE if w < 2 else REAR_BRAKE
        parts = [(0.2, lambda t: power * t / 0.2, True, lambda t: SPEED), (seconds, lambda t: power, True, lambda t: SPEED)]
        line = brake.run(parts, [0.2, seconds])[-1]
        print(km, w, *(f"{v:.8g}" for v in line[1:]), sep=",")
