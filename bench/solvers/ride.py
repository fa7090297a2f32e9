"""The ride's equations for SciPy's adaptive solvers: a line of JSON for each solver and tolerance.

Scalars and the math module throughout, which for nine states is some times faster than arrays.

ride.py CASE.json RIDE UNTIL
"""

import json
import sys
import time
import warnings
from bisect import bisect_right
from math import cos, exp, fabs, log, pi, sin, sqrt

from scipy.integrate import solve_ivp

SIZES = {"place": None, "speed": 7, "charge": 0.3, "u1": 0.3, "u2": 0.2, "winding": 10, "case": 10, "controller": 5, "cells": 3}
METHODS = ["RK45", "DOP853", "LSODA", "Radau", "BDF"]


def rates_of(board, plan, ride):
    """The derivative, its numbers bound once as locals."""
    mass, weight, rolling, air, wind = (board[k] for k in ("mass", "weight", "rolling", "air", "wind"))
    motors, force_for_torque, efficiency, turning = (board[k] for k in ("motors", "force_for_torque", "efficiency", "turning"))
    torque_constant, drag_torque, drag_slope, oil_torque = (board[k] for k in ("torque_constant", "drag_torque", "drag_slope", "oil_torque"))
    switch, switching_factor, idle, phase_at_20, copper_rise = (
        board[k] for k in ("switch_resistance", "switching_factor", "idle_power", "phase_ohms", "copper_per_kelvin"))
    flux, inductance, pole_pairs, modulation = (board[k] for k in ("flux_linkage", "phase_inductance", "pole_pairs", "modulation"))
    phase_limit, brake_limit, pack_limit, regen_limit, electrical_limit = (
        board[k] for k in ("phase_limit", "brake_phase_limit", "pack_limit", "regen_limit", "electrical_speed_limit"))
    fade_start, fade_end, taper_start, taper_end, full = (board[k] for k in ("fade_start", "fade_end", "taper_start", "taper_end", "full_voltage"))
    series, coulombs, links, wiring = (board[k] for k in ("series", "coulombs", "links", "wiring"))
    group = series / board["parallel"]
    b1, tau1, b2, tau2 = group * board["r1"], board["tau1"], group * board["r2"], board["tau2"]
    knots, cubics = board["rest_knots"], board["rest_cubics"]
    charges, temperatures, table = board["resistance_charges"], board["resistance_kelvins"], board["resistances"]
    ambient, winding_capacity, case_capacity, winding_to_case, case_to_air = (
        board[k] for k in ("ambient", "winding_capacity", "case_capacity", "winding_to_case", "case_to_air"))
    cell_capacity, pack_to_air, controller_capacity, controller_to_air, controllers = (
        board[k] for k in ("cell_capacity", "pack_to_air", "controller_capacity", "controller_to_air", "controllers"))
    grip = board["grip"] * board["weight_share"] * weight / 2
    square, accelerating = plan["cruise"] ** 2, plan["accelerating"]
    swell, wave, grade, hill = ride["swell"], 2 * pi / ride["swell_metres"], ride["grade"], 2 * pi / ride["hill_metres"]
    touched = [0]

    def locate(places, x):
        if x <= places[0]:
            return 0, 0, 0
        if x >= places[-1]:
            return len(places) - 1, len(places) - 1, 0
        i = bisect_right(places, x) - 1
        return i, i + 1, (x - places[i]) / (places[i + 1] - places[i])

    def rates(_, y):
        x, v, charge, u1, u2, winding, case, controller, cells = y.tolist()
        tail = exp(-2 * accelerating * x / square)
        a = square / 2 * (
            2 * accelerating / square * tail * (1 + swell * sin(wave * x)) + (1 - tail) * swell * wave * cos(wave * x))
        slope = grade * sin(hill * x)
        through = v + wind
        road = weight * (rolling + slope) / sqrt(1 + slope * slope) + air * through * fabs(through)
        force = mass * a + road
        speed = v * turning
        drag = drag_torque + drag_slope * speed
        i = (force / force_for_torque * (1 / efficiency if force >= 0 else efficiency) + drag) / torque_constant

        left, right, across = locate(charges, charge)
        below, above, up = locate(temperatures, ambient + cells)
        ohms = table[left][below] + across * (table[right][below] - table[left][below])
        if below != above:
            high = table[left][above] + across * (table[right][above] - table[left][above])
            ohms *= exp(up * (temperatures[above] / (ambient + cells)) * log(high / ohms))
        r0 = group * ohms
        piece = min(max(bisect_right(knots, charge) - 1, 0), len(cubics) - 1)
        c0, c1, c2, c3 = cubics[piece]
        s = min(max(charge, knots[0]), knots[-1]) - knots[piece]
        open_volts = series * (c0 + s * (c1 + s * (c2 + s * c3))) - u1 - u2
        inside = r0 + links
        resistance = inside + wiring
        phase = phase_at_20 * (1 + copper_rise * (ambient + winding - 293.15))
        power = motors * (1.5 * (phase + switch) * i * i + torque_constant * i * speed) + idle
        switching = motors * switching_factor * fabs(i)
        rest = open_volts - switching * resistance
        volts = (rest + sqrt(rest * rest - 4 * power * resistance)) / 2
        amperes = (power + switching * volts) / volts

        kelvins = ambient + controller
        fade = 1 if kelvins <= fade_start else max(0, (fade_end - kelvins) / (fade_end - fade_start))
        taper = 1 if volts >= taper_start else max(0, (volts - taper_end) / (taper_start - taper_end))
        electrical = pole_pairs * speed
        vd, vq = electrical * inductance * i, phase * i + electrical * flux
        if (i > phase_limit * fade or -i > brake_limit * fade or amperes > pack_limit * taper
                or -amperes > min(regen_limit, max(0, (full - open_volts) / inside)) or electrical > electrical_limit
                or modulation * volts / sqrt(3) < sqrt(vd * vd + vq * vq) or fabs(force) > grip):
            touched[0] += 1

        through_winding = winding_to_case * (winding - case)
        bridges = motors * (1.5 * switch * i * i + switching_factor * fabs(i) * volts) + idle
        return (
            v,
            a,
            -amperes / coulombs,
            (b1 * amperes - u1) / tau1,
            (b2 * amperes - u2) / tau2,
            (1.5 * phase * i * i - through_winding) / winding_capacity,
            ((drag - oil_torque) * speed + through_winding - case_to_air * case) / case_capacity,
            (bridges / controllers - controller_to_air * controller) / controller_capacity,
            (amperes * amperes * r0 + u1 * u1 / b1 + u2 * u2 / b2 - pack_to_air * cells) / cell_capacity,
        )

    return rates


def main(path, name, until):
    with open(path, encoding="utf-8") as file:
        document = json.load(file)
    plan, board = document["plan"], document["board"]
    ride = next(r for r in document["rides"] if r["name"] == name)
    rates = rates_of(board, plan, ride)
    sizes = [size or ride["swell_metres"] for size in SIZES.values()]
    start = [0, 0, plan["start_charge"], 0, 0, 0, 0, 0, 0]
    warnings.simplefilter("ignore")
    for method in METHODS:
        for kind in ("", ", absolute"):
            for half in range(2, 15):
                tolerance = 10 ** (-half / 2)
                # A relative tolerance of next to nothing leaves the absolute one alone, which is kinder to the distance.
                relative = tolerance if not kind else 1e-13
                best = float("inf")
                try:
                    for _ in range(3):
                        before = time.process_time()
                        found = solve_ivp(rates, (0, until), start, method=method, rtol=relative, atol=[tolerance * s for s in sizes], t_eval=[until])
                        best = min(best, time.process_time() - before)
                except ValueError:
                    # A loose tolerance may leave the road altogether; the tighter ones count.
                    continue
                if not found.success:
                    continue
                end = found.y[:, -1].tolist()
                end[5:] = [rise + board["ambient"] for rise in end[5:]]
                print(json.dumps({
                    "solver": f"SciPy {method}{kind}", "setting": tolerance, "seconds": best, "steps": 0, "calls": found.nfev, "end": [until, *end]}))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], float(sys.argv[3]))
