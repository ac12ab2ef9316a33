#!/usr/bin/env python3
"""Full stops from 100 km/h with the foot rising in 0.15 s, as one stiff ODE.

The balances of hydraulics.py with the discs turning, and with them the car: its
load moves forward as it slows, a wheel locks when it asks for more than peak
adhesion gives its load and frees below sliding adhesion, air and tyres resist.
Linings are cold throughout (the stops stay below the fade's knee).

/usr/bin/python3 stop.py > stop.csv
Columns: foot [N], missing adhesion [1], distance [m], time [s], locked wheels
as a sum of 1, 2, 4, 8, greatest pressure front left [Pa].
"""
import sys

import numpy as np
from scipy.integrate import solve_ivp

from hatchback import *
from hydraulics import SIZE, System

SLIDE = 0.80


class Car(System):
    def __init__(self, foot, wet):
        super().__init__(lambda t: foot * min(1.0, t / 0.15))
        self.grip, self.locked, self.turned = 1 - wet, np.zeros(4, bool), np.zeros(4)

    def tyres(self, z):
        """What each wheel asks for, its load, and what the road gives [N]."""
        v = z[57]
        ask = MU * RE / RADIUS * (self.n[0] + self.n[1])
        ground, weight = MASS * G * ROLLING, MASS * G
        for _ in range(40):
            front = FRONT + ground * HEIGHT / (WHEELBASE * weight)
            load = weight * np.array([front, front, 1 - front, 1 - front]) / 2 * self.grip
            force = np.minimum(ask, np.where(self.locked, SLIDE, PEAK) * load)
            ground = MASS * G * ROLLING + force.sum()
        return ask, load, (ground + 0.5 * AIR * DRAG_AREA * v * v) / MASS

    def whole(self, t, z):
        # A locked wheel keeps its disc where it stands.
        way = np.where(self.locked, self.turned, z[58])
        d = self.rates(t, z[:57], np.cos(way / RADIUS))
        return np.concatenate([d, [-self.tyres(z)[2], z[57]]])

    def slopes(self, t, z):
        j = np.zeros((59, 59))
        cosine = np.cos(np.where(self.locked, self.turned, z[58]) / RADIUS)
        j[:57, :57] = self.jacobian(t, z[:57], cosine)
        j[58, 57] = 1
        return j


def stop(foot, wet):
    car = Car(foot, wet)
    z = np.concatenate([car.start(), [100 / 3.6, 0.0]])
    t, ever, most = 0.0, 0, 0.0
    size = np.concatenate([SIZE, [10.0, 10.0]])
    while True:
        def stands(s, y):
            return y[57]

        def event(w):
            def f(s, y):
                car.whole(s, y)
                ask, load, _ = car.tyres(y)
                return ask[w] - (SLIDE if car.locked[w] else PEAK) * load[w]
            f.terminal, f.direction = True, -1 if car.locked[w] else 1
            return f
        stands.terminal = True
        end = 0.15 if t < 0.15 else 30.0
        sol = solve_ivp(car.whole, (t, end), z, method="Radau", jac=car.slopes, rtol=RTOL, atol=RTOL * size,
                        events=[stands] + [event(w) for w in range(4)])
        t, z, most = sol.t[-1], sol.y[:, -1], max(most, sol.y[5].max())
        if sol.status < 0:
            raise SystemExit(sol.message)
        if len(sol.t_events[0]):
            return z[58], t, ever, most
        for w in range(4):
            if len(sol.t_events[1 + w]):
                car.locked[w] = not car.locked[w]
                car.turned[w] = z[58]
                ever |= car.locked[w] << w
                print(f"{foot} N: wheel {w} {'locks' if car.locked[w] else 'frees'} at {t:.4f} s", file=sys.stderr)
        # A wheel that locks takes load off its mate, which may lock with it: no event then.
        while True:
            car.whole(t, z)
            ask, load, _ = car.tyres(z)
            over = np.where(car.locked, 0, ask / (PEAK * load))
            w = int(np.argmax(over))
            if over[w] <= 1 + 1e-6:
                break
            car.locked[w], car.turned[w] = True, z[58]
            ever |= 1 << w
            print(f"{foot} N: wheel {w} locks with it", file=sys.stderr)


RTOL = 1e-5
if __name__ == "__main__":
    from multiprocessing import Pool
    cases = [(100, 0.0), (150, 0.0), (200, 0.0)]  # at 200 N both front wheels lock
    with Pool(2) as pool:
        done = pool.starmap(stop, cases, chunksize=1)
    print("foot,missing,distance,time,locked,pressure")
    for (foot, wet), (way, time, locked, most) in zip(cases, done):
        print(foot, wet, f"{way:.7g}", f"{time:.7g}", int(locked), f"{most:.7g}", sep=",")
