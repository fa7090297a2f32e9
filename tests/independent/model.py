"""A second calculation of a board's figures, written from the handbook's model page and from nothing else.

    python3 tests/independent/model.py examples/tern/tern.board.yaml

prints a flat map from figure to value, in the units of the result document. Plain Python 3, standard
library only. Everything inside is SI. Section numbers are those of the model page. Every choice that the
page leaves open is marked CHOICE and listed in the README beside this file.
"""
import bisect
import json
import math
import sys

import sheet

g = 9.80665
SIGMA = 5.670374e-8
ALPHA = 0.00393                     # copper, per kelvin from 20 °C
T20 = 293.15
FRICTION = {False: {"dry": 0.70, "wet": 0.35}, True: {"dry": 0.75, "wet": 0.50}}   # urethane, rubber
CENTRE = {"upright": 0.99, "crouched": 0.84, "tucked": 0.63}


# ---------- numbers ----------

def fritsch_carlson(points):
    """Monotone cubic. CHOICE: slope of the parabola through a point and its neighbours, limited to a circle of radius 3."""
    xs, ys = zip(*sorted(points))
    n = len(xs)
    w = [xs[i + 1] - xs[i] for i in range(n - 1)]
    d = [(ys[i + 1] - ys[i]) / w[i] for i in range(n - 1)]

    def end(w0, d0, w1, d1):
        slope = d0 + (d0 - d1) * w0 / (w0 + w1)
        return slope if slope * d0 > 0 else 0.0
    if n == 2:
        m = [d[0], d[0]]
    else:
        m = [end(w[0], d[0], w[1], d[1])]
        m += [0.0 if d[i - 1] * d[i] <= 0 else (w[i] * d[i - 1] + w[i - 1] * d[i]) / (w[i - 1] + w[i]) for i in range(1, n - 1)]
        m += [end(w[-1], d[-1], w[-2], d[-2])]
    for i in range(n - 1):
        if d[i] == 0:
            m[i] = m[i + 1] = 0.0
            continue
        a, b = m[i] / d[i], m[i + 1] / d[i]
        if a * a + b * b > 9:
            t = 3 / math.hypot(a, b)
            m[i], m[i + 1] = t * a * d[i], t * b * d[i]

    def at(x):
        if x <= xs[0]:
            return ys[0]
        if x >= xs[-1]:
            return ys[-1]
        i = bisect.bisect_right(xs, x) - 1
        h = xs[i + 1] - xs[i]
        t = (x - xs[i]) / h
        return ((1 + 2 * t) * (1 - t) ** 2 * ys[i] + t * (1 - t) ** 2 * h * m[i]
                + t * t * (3 - 2 * t) * ys[i + 1] + t * t * (t - 1) * h * m[i + 1])
    return at


def between(x, xs, ys):
    if x <= xs[0]:
        return ys[0]
    if x >= xs[-1]:
        return ys[-1]
    i = bisect.bisect_right(xs, x) - 1
    return ys[i] + (ys[i + 1] - ys[i]) * (x - xs[i]) / (xs[i + 1] - xs[i])


def root(f, low, high):
    """Bisection; f(low) and f(high) have different signs."""
    rising = f(high) > 0
    for _ in range(200):
        middle = (low + high) / 2
        if (f(middle) > 0) == rising:
            high = middle
        else:
            low = middle
    return (low + high) / 2


def last_true(holds, high):
    """The largest x in [0, high] for which holds(x), true from 0 up to somewhere."""
    if holds(high):
        return high
    low = 0.0
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low


def soc(text):
    return float(str(text).replace("%", "")) / 100


# ---------- the board ----------

class Model:
    def __init__(self, b):
        self.b = b
        brief, p, self.limits = b["brief"], b["parts"], b["limits"]
        self.brief, self.p = brief, p
        self.T = brief["temperature"]
        self.n = int(p["drive"]["motors"])
        self.controllers = int(p["controller"].get("count") or math.ceil(self.n / p["controller"]["motors"]))

        # 1 Rider, air, road
        h = brief.get("altitude", 0.0)
        self.pressure = 101325 * (1 - 0.0065 * h / 288.15) ** 5.25588
        self.rho = self.pressure / (287.05287 * self.T)
        # What no part's sheet states: the handbook's page of usual values.
        part = {"upright": 0.307, "crouched": 0.230, "tucked": 0.154}
        body = 1.955 * (brief["rider_mass"] / 80) ** 0.425
        self.cda = brief["drag_area"] if "drag_area" in brief else part[brief["stance"]] * body
        self.wind = brief.get("headwind", 0.0)
        crr = p["wheels"]["rolling_resistance"]
        self.crr = crr[brief["surface"]] if isinstance(crr, dict) else crr
        self.m_board = self.board_mass()
        self.m = brief["rider_mass"] + brief.get("gear_mass", 0.0) + self.m_board
        self.r = p["wheels"]["diameter"] / 2

        # 2 Drive
        kind = p["drive"]["kind"]
        if kind == "belt":
            self.z1, self.z2 = p["motor_pulley"]["teeth"], p["wheel_pulley"]["teeth"]
            self.G = self.z2 / self.z1
        else:
            self.G = p["gearbox"]["ratio"] if kind == "gear" else 1.0
        given = p["drive"].get("efficiency") or p.get("gearbox", {}).get("efficiency")
        self.eta = given or {"belt": 0.94, "gear": 0.95, "hub": 1.0}[kind]

        # 3 Motor
        motor, c = p["motor"], p["controller"]
        self.motor, self.c = motor, c
        self.pp = motor["pole_pairs"]
        kv = motor["kv"]                                     # rad/s per volt
        self.flux = 1 / (math.sqrt(3) * kv * self.pp)
        self.kt = 1.5 * self.pp * self.flux
        self.R20 = motor["phase_resistance"] if "phase_resistance" in motor else motor["line_resistance"] / 2
        self.R = self.R20 * (1 + ALPHA * (self.T - T20))
        self.L = motor["phase_inductance"]
        if "no_load_tests" in motor:
            tests = [(sheet.si(v), i) for v, i in motor["no_load_tests"].items()]
            w = [kv * v for v, _ in tests]
            t = [v * i / (kv * v) for v, i in tests]
            mw, mt = sum(w) / len(w), sum(t) / len(t)
            slope = sum((x - mw) * (y - mt) for x, y in zip(w, t)) / sum((x - mw) ** 2 for x in w)
            self.drag = lambda x: mt + slope * (x - mw)
        else:
            w0 = kv * motor["no_load_voltage"]
            t0 = motor["no_load_current"] * motor["no_load_voltage"] / w0
            self.drag = lambda x: t0 * (0.5 + 0.5 * x / w0)
        self.oil = p["gearbox"].get("oil_loss", 0.0) if kind == "gear" else 0.0

        wheels = int(p["wheels"].get("count") or 4)
        tyre = "durometer" not in p["wheels"] and p["wheels"]["diameter"] >= 0.140
        j_wheel = p["wheels"].get("inertia") or (0.65 if tyre else 0.58) * p["wheels"]["mass"] * self.r ** 2
        self.m_e = self.m + wheels * j_wheel / self.r ** 2 + self.n * motor["rotor_inertia"] * self.G ** 2 / self.r ** 2

        # 4 Pack
        cell, pack = p["cell"], p["pack"]
        self.S, self.P = int(pack["series"]), int(pack["parallel"])
        self.cell, self.pack = cell, pack
        self.Q = self.P * cell["capacity"]                   # coulombs
        self.rest = fritsch_carlson([(soc(k), v) for k, v in cell["rest_voltage"].items()])
        kinds = lambda r: {end.split()[0] for end in (r["from"], r["to"])}
        self.runs = [r for r in b["wiring"] if kinds(r) == {"pack", "controller"}]
        each = [
            2 * r["length"] * 17.241e-9 / r["gauge"] * (1 + ALPHA * (self.T - T20))
            + (2 * b["plugs"].get(r["plug"], {}).get("contact_resistance", 0.4e-3) if "plug" in r else 0.0)
            for r in self.runs]
        # CHOICE: a run to each controller lies beside the others.
        self.R_wire = 1 / sum(1 / r for r in each) if each else 0.0
        protection = pack.get("protection") or {}
        # Only what a device holds counts: what is set, the controllers' own maximum, the protection's trip. Ratings hold nothing.
        asked = [self.limits.get("pack_current"), c["pack_current"] * self.controllers, protection.get("discharge_current")]
        self.I_pack_max = min(x for x in asked if x is not None)
        # CHOICE: the controller's peak rating stands for what it holds itself to.
        self.i_max = min(x for x in (self.limits.get("phase_current"), c["phase_current_peak"]) if x)
        self.i_brake = min(x for x in (self.limits.get("brake_phase_current"), c["phase_current_peak"]) if x is not None)
        back = [self.limits.get("regen_current"), c["regen_current"] * self.controllers]
        if protection:
            back.append(protection["charge_current"] if protection.get("regen_through") == "yes" else 0.0)
        self.I_regen_max = min(x for x in back if x is not None)
        self.slips = False
        # Both axles driven: their share is the whole, and nothing moves off them. Driving moves weight to the rear.
        driven = p["drive"].get("driven", "rear")
        self.share = 1.0 if driven == "both" else p["drive"].get("weight_share", 0.5)
        self.gain = {"rear": 1.0, "front": -1.0, "both": 0.0}[driven]
        self.mu = FRICTION["durometer" not in p["wheels"] and p["wheels"]["diameter"] >= 0.140][brief.get("road", "dry")]
        self.centre = CENTRE[brief.get("stance", "upright")]
        wheelbase = p["deck"]["wheelbase"]
        self.wheelbase = wheelbase[0] if isinstance(wheelbase, list) else wheelbase

    def board_mass(self):
        """CHOICE: everything that is fitted, the remote with it; the charger stays at home; plugs and wire are not counted."""
        p, n = self.p, self.n
        of_each_motor = ("mount", "motor", "motor_pulley", "wheel_pulley", "belt", "gearbox")
        total = 0.0
        for slot, part in p.items():
            if slot in ("drive", "charger", "cell", "pack", "fittings"):
                continue
            each = n if slot in of_each_motor else 4 if slot == "wheels" else self.controllers if slot == "controller" else 1
            mass = part.get("mass")
            if slot == "belt" and mass is None:        # a belt that nobody weighed: 3.5 kg for each square metre (drivetrain page)
                mass = 3.5 * part["width"] * self.belt_length()
            total += (mass or 0.0) * (part.get("count") or each)
        total += sum(f["mass"] * (f.get("count") or 1) for f in p.get("fittings", []))
        pack = p["pack"]
        total += p["cell"]["mass"] * pack["series"] * pack["parallel"] + pack.get("mass_extra", 0.0)
        return total + (pack["protection"]["mass"] if pack.get("protection") else 0.0)

    # --- 1 ---
    def road(self, v, grade=0.0):
        theta = math.atan(grade)
        air = v + self.wind
        return self.m * g * (self.crr * math.cos(theta) + math.sin(theta)) + 0.5 * self.rho * self.cda * air * abs(air)

    # --- 2 ---
    def belt_length(self):
        belt = self.p["belt"]
        return round(belt["length"] / 0.005) * 0.005 if "length" in belt else belt["teeth"] * 0.005

    def belt(self):
        d1, d2 = self.z1 * 0.005 / math.pi, self.z2 * 0.005 / math.pi
        length = self.belt_length()

        def over(c):
            phi = math.asin((d2 - d1) / (2 * c))
            return 2 * c * math.cos(phi) + math.pi * (d1 + d2) / 2 + phi * (d2 - d1) - length
        c = root(over, (d2 - d1) / 2 * 1.000001, length)
        phi = math.asin((d2 - d1) / (2 * c))
        return c, self.z1 * (math.pi - 2 * phi) / (2 * math.pi), c * math.cos(phi)

    def belt_load(self):
        """Peak pull, static tension and note, by the drivetrain page: 0.55 of the pull, at least half of the braking pull."""
        d1 = self.z1 * 0.005 / math.pi
        pull, brake = 2 * self.kt * self.i_max / d1, 2 * self.kt * self.i_brake / d1
        tension = max(0.55 * pull, brake / 2)
        k = 3.5 * self.p["belt"]["width"]
        return pull, tension, math.sqrt(tension / (4 * k)) / self.belt()[2]

    # --- 4 ---
    def R_cell(self, s):
        """What a lasting current meets: the resistance at once, and the slow branches as far as the cell has them."""
        slow = self.cell.get("polarisation", {})
        return sum(self.R_of(table, s) for table in (self.cell["resistance"], slow.get("R1", 0.0), slow.get("R2", 0.0)))

    def R_of(self, table, s):
        if not isinstance(table, dict):
            return table
        rows = sorted((soc(k), v) for k, v in table.items() if k != "temperatures")
        xs = [k for k, _ in rows]
        if "temperatures" not in table:
            return between(s, xs, [v for _, v in rows])
        columns = [between(s, xs, [row[j] for _, row in rows]) for j in range(len(table["temperatures"]))]
        pairs = sorted((1 / t, math.log(r)) for t, r in zip(table["temperatures"], columns))
        return math.exp(between(1 / self.T, [a for a, _ in pairs], [b for _, b in pairs]))

    def R_pack(self, s):
        return self.S / self.P * self.R_cell(s) + self.pack.get("links", 0.0)

    def E(self, s):
        return self.S * self.rest(s)

    # --- 3 ---
    def bus(self, i, omega, s):
        """Bus volts, pack current and bus power when every motor carries i (negative brakes); None where there is no root."""
        a = self.n * (1.5 * self.R * i * i + self.kt * i * omega + 1.5 * i * i * self.c["bridge_resistance"])
        a += self.controllers * self.c["idle_power"]
        b = self.n * 6 / math.pi * abs(i) * 0.5 * self.c["switching_time"] * self.c["switching_frequency"]
        return self.bus_of(a, b, s)

    def bus_of(self, a, b, s):
        """The power is a + b V, so that V = E − R (a / V + b) is a quadratic in V."""
        R = self.R_pack(s) + self.R_wire
        e = self.E(s) - R * b
        under = e * e - 4 * a * R
        if under < 0:
            return None
        V = (e + math.sqrt(under)) / 2
        return V, (a + b * V) / V, a + b * V

    def fits_voltage(self, i, omega, V):
        w = self.pp * omega
        return math.hypot(w * self.L * i, self.R * i + w * self.flux) <= 0.95 * V / math.sqrt(3)

    def taper(self, V):
        """CHOICE: the controller sees its own terminals, so the loaded volts are those of the bus, after the wire."""
        start, end = self.limits.get("taper_start"), self.limits.get("taper_end")
        if start is None or end is None:
            return 1.0
        return min(1.0, max(0.0, (V / self.S - end) / (start - end)))

    def drive_current(self, v, s):
        omega = v / self.r * self.G
        if self.pp * omega > self.c["electrical_speed_limit"]:
            return 0.0

        def holds(i):
            state = self.bus(i, omega, s)
            if state is None:
                return False
            V, I, _ = state
            return self.fits_voltage(i, omega, V) and I <= self.I_pack_max * self.taper(V) + 1e-12
        return last_true(holds, self.i_max)

    def wheel_force(self, i, omega):
        t = self.kt * i - self.drag(omega) - self.oil
        return self.n * t * self.G / self.r * (self.eta if t > 0 else 1 / self.eta)

    def largest_force(self, v, s, accelerating=False, grade=0.0):
        f = self.wheel_force(self.drive_current(v, s), v / self.r * self.G)
        # Grip at steady speed: the driven axle's share of the weight that presses on the road.
        # CHOICE: the transfer counts only where the board accelerates; all of the weight is the most an axle carries.
        whole = self.mu * self.m * g * math.cos(math.atan(grade))
        cap = self.share * whole
        if accelerating:
            k = self.gain * self.mu * self.m / self.m_e * self.centre / self.wheelbase
            cap = whole if k >= 1 else min(whole, (cap - k * self.road(v, grade)) / (1 - k))
        self.slips = self.slips or f > cap
        return min(f, cap)

    def current_for(self, v, grade):
        omega = v / self.r * self.G
        torque = self.road(v, grade) * self.r / (self.n * self.G)
        torque = torque / self.eta if torque > 0 else torque * self.eta
        return (torque + self.drag(omega) + self.oil) / self.kt, omega

    def top_speed(self, s):
        short = lambda v: self.largest_force(v, s) - self.road(v)
        v, step = 0.0, 0.05
        if short(0.0) < 0:
            return 0.0
        while short(v + step) >= 0:
            v += step
        return root(short, v, v + step)

    def unloaded(self, s):
        """Wheels in the air: each motor carries its own drag (and the oil's) and nothing else."""
        def left(omega):
            i = (self.drag(omega) + self.oil) / self.kt
            if (state := self.bus(i, omega, s)) is None:
                return -1.0
            V, w = state[0], self.pp * omega
            return 0.95 * V / math.sqrt(3) - math.hypot(w * self.L * i, self.R * i + w * self.flux)
        omega = root(left, 0.0, 5000.0)
        return min(omega, self.c["electrical_speed_limit"] / self.pp) / self.G * self.r

    def climb_grade(self, v, s):
        return root(lambda grade: self.largest_force(v, s, grade=grade) - self.road(v, grade), -1.0, 5.0)

    # --- 4 ---
    def cruise(self, v, n=4000):
        i, omega = self.current_for(v, 0.0)
        if (state := self.bus(i, omega, 0.5)) is None:
            return math.nan, math.nan, 0.0
        V, I, P = state
        # CHOICE: power and consumption are counted at the cells' own terminals: bus, wire, links.
        cells = P + I * I * (self.R_wire + self.pack.get("links", 0.0))
        # Range: constant bus power; charge counted in amperes.
        stop, t = self.brief.get("reserve", 0.0), 0.0
        step = (1 - stop) / n
        for k in range(n):
            s = 1 - (k + 0.5) * step
            state = self.bus_of(P, 0.0, s)
            # CHOICE: without a taper the ride ends at the cells' least voltage.
            if state is None or state[0] / self.S < self.limits.get("taper_end", self.cell["voltage_empty"]):
                break
            t += self.Q * step / state[1]
        return cells, cells / v / 3.6, v * t / 1000

    def tail(self, ch):
        """Constant current, then a current that falls with a time constant (handbook, battery): seconds of the first, and the constant."""
        cell, I = self.cell, ch["current"]
        end = ch.get("end_current") or I / 10
        tau = cell.get("charge_tail")
        if tau is None and 4.0 < cell["voltage_full"] < 4.4:
            tau = 220 * cell["capacity"] / 3600 * min(3, max(1, 1 + (298.15 - self.T) / 25))
        target = min(ch["voltage"], cell["voltage_full"] * self.S)
        reached = 1.0 if self.S * self.rest(1.0) <= target else root(lambda s: target - self.S * self.rest(s), 0.0, 1.0)
        if tau is None or not 0 < end < I:
            return None
        constant = self.Q * reached / I - tau * (1 - end / I)
        return (constant, tau, I, end / I) if constant > 0 else None

    def charge_time(self, until):
        """CHOICE: the charger holds the pack's terminals (links count), and stops at 100 % where the end current comes later."""
        ch, n, t = self.p["charger"], 20000, 0.0
        tail = self.tail(ch)
        if tail is not None:
            constant, tau, I, k = tail
            if until == 1.0:
                return (constant + tau * math.log(1 / k)) / 3600
            left = until * self.Q - constant * I
            return until * self.Q / I / 3600 if left <= 0 else (constant + tau * -math.log(1 - left / (I * tau))) / 3600
        for k in range(n):
            s = (k + 0.5) / n
            if s > until:
                break
            I = min(ch["current"], (min(ch["voltage"], self.S * self.cell["voltage_full"]) - self.E(s)) / self.R_pack(s))
            if I < (ch.get("end_current") or ch["current"] / 10):
                break
            t += self.Q / n / I
        return t / 3600

    # --- 5 ---
    def case_to_air(self, T, v):
        motor = self.motor
        if "case_to_air" in motor:
            return motor["case_to_air"]
        D, length, Ta = motor["can_diameter"], motor["can_length"], self.T
        film = (T + Ta) / 2
        mu = 1.458e-6 * film ** 1.5 / (film + 110.4)
        k = 2.64638e-3 * film ** 1.5 / (film + 245.4 * 10 ** (-12 / film))
        rho = self.pressure / (287.05287 * film)
        nu, Pr = mu / rho, mu * 1006 / k
        Re = (v / 2) * D / nu
        forced = 0.3 + 0.62 * Re ** 0.5 * Pr ** (1 / 3) / (1 + (0.4 / Pr) ** (2 / 3)) ** 0.25 * (1 + (Re / 282000) ** 0.625) ** 0.8
        Ra = g / film * abs(T - Ta) * D ** 3 / nu ** 2 * Pr
        natural = (0.60 + 0.387 * Ra ** (1 / 6) / (1 + (0.559 / Pr) ** (9 / 16)) ** (8 / 27)) ** 2
        h = max(forced, natural) * k / D + 0.8 * SIGMA * (T * T + Ta * Ta) * (T + Ta)
        shielding = self.p["drive"].get("shielding") or (1.0 if self.p["drive"]["kind"] == "hub" else 1.3)
        return shielding / (h * (math.pi * D * length + math.pi * D * D / 4))

    def winding_at(self, i, omega, v):
        motor = self.motor
        R_wc = motor.get("winding_to_case") or 0.80 / motor["mass"]
        P_drag = self.drag(omega) * omega
        T_w = T_c = self.T
        for _ in range(2000):
            P_cu = 1.5 * i * i * self.R20 * (1 + ALPHA * (T_w - T20))
            T_c = self.T + (P_cu + P_drag) * self.case_to_air(max(T_c, self.T + 1e-6), v)
            new = T_c + P_cu * R_wc
            if abs(new - T_w) < 1e-10:
                break
            T_w = new
            if T_w > 2000:
                return math.inf
        return T_w - 273.15

    def minutes_to_limit(self, i, omega, v):
        """Runge-Kutta from the brief's temperature; None where the limit is never reached."""
        motor = self.motor
        if "winding_limit" not in motor or self.winding_at(i, omega, v) <= motor["winding_limit"] - 273.15:
            return None
        R_wc = motor.get("winding_to_case") or 0.80 / motor["mass"]
        C_w = motor.get("winding_capacity") or 0.14 * motor["mass"] * 385
        C_c = motor.get("case_capacity") or 310 * motor["mass"]
        P_drag = self.drag(omega) * omega

        def rate(w, c):
            P_cu = 1.5 * i * i * self.R20 * (1 + ALPHA * (w - T20))
            return (P_cu - (w - c) / R_wc) / C_w, (P_drag + (w - c) / R_wc - (c - self.T) / self.case_to_air(max(c, self.T + 1e-6), v)) / C_c
        w = c = self.T
        t, h = 0.0, 0.25
        while w < motor["winding_limit"]:
            a = rate(w, c)
            b = rate(w + h / 2 * a[0], c + h / 2 * a[1])
            d = rate(w + h / 2 * b[0], c + h / 2 * b[1])
            e = rate(w + h * d[0], c + h * d[1])
            before, w = w, w + h / 6 * (a[0] + 2 * b[0] + 2 * d[0] + e[0])
            c += h / 6 * (a[1] + 2 * b[1] + 2 * d[1] + e[1])
            t += h
        return (t - h * (w - motor["winding_limit"]) / (w - before)) / 60

    # --- 6 ---
    def brake_state(self, v, s, grade=0.0):
        """Deceleration that is left at a speed."""
        omega = v / self.r * self.G
        room = (self.S * self.cell["voltage_full"] - self.E(s)) / self.R_pack(s)
        most = max(0.0, min(self.I_regen_max, room))

        def fits(i):
            return -self.bus(-i, omega, s)[1] <= most
        peak = self.kt * omega / (3 * (self.R + self.c["bridge_resistance"]))
        i = self.i_brake
        if not fits(min(i, peak)):
            i = last_true(fits, min(i, peak))
        # CHOICE: braking through the belt, the wheel feels the motor's torque divided by the efficiency.
        f = self.n * (self.kt * i + self.drag(omega) + self.oil) * self.G / (self.eta * self.r)
        # Grip: f <= mu (share m g − m a h / wheelbase) with a the whole deceleration.
        whole = self.mu * self.m * g * math.cos(math.atan(grade))
        k = self.gain * self.mu * self.m / self.m_e * self.centre / self.wheelbase
        cap = whole if k <= -1 else min(whole, max(0.0, (self.share * whole - k * self.road(v, grade)) / (1 + k)))
        self.slips = self.slips or f > cap
        return (min(f, cap) + self.road(v, grade)) / self.m_e

    def brake_distance(self, v0, s, grade=0.0):
        n = 4000
        dv = v0 / n
        left = [(v, self.brake_state(v, s, grade)) for v in ((k + 0.5) * dv for k in range(n))]
        return None if min(a for _, a in left) <= 0 else v0 * 1.0 + sum(v * dv / a for v, a in left)

    def grade_held(self, v, s):
        """The first descent that the brake does not hold at the speed and at rest, walking from the level."""
        short = lambda grade: min(self.brake_state(v, s, -grade), self.brake_state(0.0, s, -grade))
        if short(0.0) <= 0:
            return 0.0
        step = 1 / 256
        for k in range(256):
            if short((k + 1) * step) <= 0:
                return root(short, k * step, (k + 1) * step)
        return 1.0

    # --- 5, wires ---
    def wire_at(self, run, current):
        """Copper temperature of one wire in free air. CHOICE: its outside is 1.2 times the solid wire and 2 mm."""
        D = run.get("outer_diameter") or 1.2 * math.sqrt(4 / math.pi * run["gauge"]) + 0.002
        Ta = self.T

        def short(T):
            film = (T + Ta) / 2
            mu = 1.458e-6 * film ** 1.5 / (film + 110.4)
            k = 2.64638e-3 * film ** 1.5 / (film + 245.4 * 10 ** (-12 / film))
            nu = mu / (self.pressure / (287.05287 * film))
            Pr = mu * 1006 / k
            Ra = g / film * (T - Ta) * D ** 3 / nu ** 2 * Pr
            natural = (0.60 + 0.387 * Ra ** (1 / 6) / (1 + (0.559 / Pr) ** (9 / 16)) ** (8 / 27)) ** 2
            h = natural * k / D + 0.9 * SIGMA * (T * T + Ta * Ta) * (T + Ta)
            return math.pi * D * h * (T - Ta) - current ** 2 * 17.241e-9 / run["gauge"] * (1 + ALPHA * (T - T20))
        return root(short, Ta + 1e-9, Ta + 900) - 273.15

    # --- 7 ---
    def fit(self):
        p, out = self.p, {}
        driven = p["front_truck"] if p["drive"].get("driven") == "front" else p["rear_truck"]
        deck = p["deck"]
        if p["drive"]["kind"] != "hub" and "mount" in p:
            angles = p["mount"]["angles"]
            angle = p["drive"].get("mount_angle", angles[0] if isinstance(angles, list) else angles)
            c = self.belt()[0] if p["drive"]["kind"] == "belt" else p["mount"]["centre_min"]
            out["fit.motor_above_road"] = (self.r + c * math.sin(angle) - self.motor["can_diameter"] / 2) * 1000
        if "box" in p:
            z = driven["height"] - {"top": 0.0, "drop-through": deck["thickness"], "drop-platform": deck.get("platform_drop", 0.0)}[deck["mounting"]]
            bend = deck.get("bend_per_kg", 0.0) * (self.brief["rider_mass"] + self.brief.get("gear_mass", 0.0))
            under = self.r + z - p["box"]["inner_depth"] - p["box"]["wall"] - bend
            out["fit.box_above_road"] = under * 1000
            out["fit.breakover"] = math.degrees(2 * math.atan(2 * under / self.wheelbase))
        return out

    # --- all of it ---
    def figures(self):
        brief, out = self.brief, {}
        out["mass.board"] = self.m_board
        out["mass.rolling"] = self.m
        out["drive.ratio"] = self.G
        out["mass.effective"] = self.m_e
        if self.p["drive"]["kind"] == "belt":
            c, mesh, span = self.belt()
            out["drive.centre_distance"], out["drive.teeth_in_mesh"], out["drive.span"] = c * 1000, mesh, span * 1000
            out["drive.belt_teeth"] = self.belt_length() / 0.005
            out["drive.peak_belt_pull"], out["drive.static_tension"], out["drive.span_frequency"] = self.belt_load()
            out["drive.belt_speed"] = self.unloaded(1.0) / self.r * self.z2 * 0.005 / (2 * math.pi)
        out["motor.torque_constant"] = self.kt
        out["motor.flux_linkage"] = self.flux
        out["pack.energy"] = self.S * self.Q * self.cell["voltage_nominal"] / 3600
        out["motor.peak_torque"] = self.kt * self.i_max
        out["motor.electrical_speed"] = self.unloaded(1.0) / self.r * self.G * self.pp * 30 / math.pi
        out["pack.cells"] = self.S * self.P
        out["pack.capacity"] = self.Q / 3600
        out["pack.voltage_full"], out["pack.voltage_empty"] = (self.S * self.cell[k] for k in ("voltage_full", "voltage_empty"))
        R = self.R_pack(0.5) + self.R_wire
        I = min(self.I_pack_max, self.E(0.5) / (2 * R))
        out["pack.feed_power"] = I * (self.E(0.5) - I * R)
        out["limits.phase_current"], out["limits.pack_current"], out["limits.regen_current"] = self.i_max, self.I_pack_max, self.I_regen_max
        out["pack.resistance"] = self.R_pack(0.5)
        out["speed.top_full"] = self.top_speed(1.0) * 3.6
        out["speed.top_half"] = self.top_speed(0.5) * 3.6
        out["speed.top_reserve"] = self.top_speed(brief.get("reserve", 0.0)) * 3.6
        out["speed.unloaded_full"] = self.unloaded(1.0) * 3.6
        out["force.start"] = self.largest_force(0.0, 1.0, accelerating=True)
        vc = brief["climb_speed"]
        out["climb.grade_at_climb_speed"] = self.climb_grade(vc, 0.5) * 100
        i, omega = self.current_for(vc, brief["climb_wanted"])
        out["climb.phase_current"] = i
        out["climb.pack_current"] = self.bus(i, omega, 0.5)[1]
        out["cruise.power"], out["cruise.consumption"], out["cruise.range"] = self.cruise(brief["cruise_speed"])
        if "range_wanted" in brief:
            far = lambda v: self.cruise(v, 1000)[2] - brief["range_wanted"] / 1000
            paces = [4 / 3.6 + 0.25 * k for k in range(150)]
            fall = next(((a, b) for a, b in zip(paces, paces[1:]) if far(a) > 0 >= far(b)), None)
            out["cruise.pace_for_range_wanted"] = root(far, *fall) * 3.6 if fall else None
        out["brake.regen_distance"] = self.brake_distance(brief["cruise_speed"], 0.5)
        out["brake.regen_distance_full"] = self.brake_distance(brief["cruise_speed"], 1.0)
        out["brake.regen_distance_downhill"] = self.brake_distance(vc, 0.5, -brief["climb_wanted"])
        out["brake.grade_held_full"] = self.grade_held(vc, 1.0) * 100
        out["charge.time_lower_bound"] = self.Q / self.p["charger"]["current"] / 3600
        out["charge.time_full"] = self.charge_time(1.0)
        out["charge.time_80"] = self.charge_time(0.8)
        out["heat.winding_at_climb"] = self.winding_at(i, omega, vc)
        out["heat.minutes_to_limit_at_climb"] = self.minutes_to_limit(i, omega, vc)
        if self.runs:
            share = self.I_pack_max / len(self.runs)
            out["wire.pack_temperature"] = max(self.wire_at(r, share) for r in self.runs)
            out["wire.pack_drop"] = self.I_pack_max * self.R_wire
        leads = [r for r in self.b["wiring"] if {r["from"].split()[0], r["to"].split()[0]} & {"motor", "motors"}]
        if leads:
            out["wire.motor_temperature"] = max(self.wire_at(r, i / math.sqrt(2)) for r in leads)
            hot = out["wire.motor_temperature"] + 273.15
            out["wire.motor_lead_loss"] = self.n * 1.5 * i * i * leads[0]["length"] * 17.241e-9 / leads[0]["gauge"] * (1 + ALPHA * (hot - T20))
        out.update(self.fit())
        return out


if __name__ == "__main__":
    for path in sys.argv[1:]:
        numbers = json.load(open(path)) if path.endswith(".json") else sheet.board(path)
        model = Model(numbers)
        figures = model.figures()
        if model.slips:
            print(f"{numbers['name']}: the grip of the driven axle was the limit somewhere", file=sys.stderr)
        print(json.dumps({k: None if v is None or math.isinf(v) else float(f"{v:.7g}") for k, v in figures.items()}, indent=2))
