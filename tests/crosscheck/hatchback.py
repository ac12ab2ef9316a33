"""The compact hatchback's numbers, typed again from the table of the physics
page and the docstrings (SI, °C). Wheels: front left, front right, rear left,
rear right, as arrays of four."""
import numpy as np

ATM, G = 101325.0, 9.80665


def four(front, rear):
    return np.array([front, front, rear, rear], float)


# corners
D = four(54e-3, 34e-3)
AREA = np.pi / 4 * D**2
K1, K3, BRIDGE = four(60e6, 45e6), four(2.5e15, 2.5e15), four(120e6, 90e6)
SEAL_K, SEAL_F, GRIP = 0.9e6, 120.0, 55e-6
PIN_K, PIN_F = 8e6, 15.0
A, B, KAPPA = four(65e-3, 55e-3), four(28e-3, 24e-3), 0.30
BOOT, TILT, GAP = 300.0, 50.0, 0.12e-3
EAR_K, EAR_F, GREASE, SEAL_DRAG = 20e6, 5.0, 400.0, 400.0
RUNOUT = 15e-6  # to each side
RE, MU = four(104e-3, 101e-3), 0.38
# lines and fluid
SWELL, FLUID, LINE = four(0.020e-12, 0.015e-12), four(60e-6, 45e-6), four(1e10, 1.4e10)
KNEE, SLOPE = 2.5e6, 0.35
BULK, RHO, BETA = 1.6e9, 1050.0, 0.8e-3
CD, GAMMA, COOL = 0.6, 1.4, 0.3
CIRCUIT = np.array([0, 1, 1, 0])
# pedal, booster, master cylinder
RATIO, FREE, GAIN, THRESHOLD, CEILING = 3.8, 1.5e-3, 4.0, 40.0, 2500.0
MASTER = np.pi / 4 * 20.64e-3**2
ETA, STROKE = 0.95, np.array([17e-3, 15e-3])
PRELOAD, SPRING = np.array([90.0, 90.0]), np.array([1500.0, 1800.0])
PORT, LAP, CUP, DAMP = 0.4e-6, 0.05e-3, 2e9, 500.0
ROD_F, ROD_SHARE, ROD_K = 15.0, 0.03, 0.2e6

# body
MASS, WHEELBASE, HEIGHT, FRONT = 1350.0, 2.55, 0.54, 0.60
RADIUS, PEAK, DRAG_AREA, ROLLING, AIR = 0.300, 0.95, 0.70, 0.012, 1.2


def boost(foot):
    """Rod and booster force [N] with the vacuum full."""
    rod = RATIO * foot
    return rod + min(GAIN * max(0.0, rod - THRESHOLD), CEILING)
