#!/usr/bin/env python3
"""Two runs of a front brake of the hatchback, in air of 20 °C (see heat.py): a
stop from 30 m/s in 4 s, the power risen in 0.2 s and then falling in proportion
to speed from 40 kW at each pad, then 600 s at 15 m/s; and a drag of 3 kW a pad
at 12 m/s for 300 s, then 300 s standing.

/usr/bin/python3 disc.py > disc.csv
Columns: run, t, face, mean, hat, pad_in, pad_out, piston, fluid (°C).
"""
from heat import FRONT_BRAKE


def pulse(t):
    return 2 * [40e3 * min(1, t / 0.2) * (1 - t / 4)]


def slowing(t):
    return 30 * (1 - t / 4)


def none(t):
    return [0.0, 0.0]


RUNS = [
    [(0.2, pulse, True, slowing), (4.0, pulse, True, slowing), (604.0, none, False, lambda t: 15.0)],
    [(300.0, lambda t: [3e3, 3e3], True, lambda t: 12.0), (600.0, none, False, lambda t: 0.0)],
]
TIMES = [[0.1, 0.2, 0.3, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 7, 10, 20, 40, 70, 100, 150, 200, 300, 400, 500, 604],
         [1, 5, 10, 30, 60, 100, 150, 200, 250, 300, 305, 310, 330, 360, 400, 450, 500, 600]]

print("run,t,face,mean,hat,pad_in,pad_out,piston,fluid")
for number, (parts, times) in enumerate(zip(RUNS, TIMES)):
    for line in FRONT_BRAKE.run(parts, times):
        print(number, *(f"{v:.8g}" for v in line), sep=",")
