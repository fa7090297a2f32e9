"""Reads a board file and its shelf into plain SI numbers, with the standard library alone.

It understands as much of YAML as the examples use: block maps and lists, flow maps and lists,
comments, quoted words. It checks nothing; the program's own reader does that.
"""
import math
import pathlib
import re

UNITS = {
    "mm": 1e-3, "cm": 1e-2, "m": 1.0, "km": 1e3, "in": 0.0254, "ft": 0.3048, "mi": 1609.344,
    "g": 1e-3, "kg": 1.0, "lb": 0.45359237, "oz": 0.028349523125,
    "N": 1.0, "Nm": 1.0, "Nm/deg": 180 / math.pi,
    "A": 1.0, "mA": 1e-3, "V": 1.0, "mV": 1e-3, "W": 1.0, "kW": 1e3,
    "ohm": 1.0, "mohm": 1e-3, "uH": 1e-6, "uF": 1e-6, "Ah": 3600.0,
    "ns": 1e-9, "us": 1e-6, "s": 1.0, "min": 60.0, "h": 3600.0, "Hz": 1.0, "kHz": 1e3,
    "deg": math.pi / 180, "%": 0.01, "rpm": math.pi / 30, "rpm/V": math.pi / 30,
    "km/h": 1 / 3.6, "mph": 0.44704, "m/s": 1.0, "m2": 1.0, "ft2": 0.09290304, "mm2": 1e-6, "kg m2": 1.0,
    "J/K": 1.0, "K/W": 1.0, "A2s": 1.0, "mm/kg": 1e-3,
}


def si(text):
    """A number in SI units, or the text itself where it is not a number with a unit."""
    if not isinstance(text, str):
        return text
    if m := re.fullmatch(r"AWG (\d+)", text):
        d = 0.127e-3 * 92 ** ((36 - int(m[1])) / 39)
        return math.pi / 4 * d * d
    if m := re.fullmatch(r"(?:(\d+) )?(\d+)/(\d+)\s*(.*)", text):
        number, unit = int(m[1] or 0) + int(m[2]) / int(m[3]), m[4].strip()
    elif m := re.fullmatch(r"([-+]?\d+(?:\.\d+)?)\s*(.*)", text):
        number, unit = float(m[1]), m[2].strip()
    else:
        return text
    if unit == "":
        return number
    if unit == "°C":
        return number + 273.15
    if unit == "°F":
        return (number - 32) / 1.8 + 273.15
    return number * UNITS[unit] if unit in UNITS else text


# --- the little bit of YAML ---

def uncommented(line):
    out, quote = "", None
    for i, c in enumerate(line):
        if quote:
            quote = None if c == quote else quote
        elif c in "'\"":
            quote = c
        elif c == "#" and (i == 0 or line[i - 1] in " \t"):
            break
        out += c
    return out.rstrip()


def flow(text):
    text = text.strip()
    if text[:1] in "{[" and text:
        parts, depth, start, quote = [], 0, 1, None
        for i, c in enumerate(text):
            if quote:
                quote = None if c == quote else quote
            elif c in "'\"":
                quote = c
            elif c in "{[":
                depth += 1
            elif c in "}]":
                depth -= 1
            if (c == "," and depth == 1) or depth == 0 and not quote:
                parts.append(text[start:i].strip())
                start = i + 1
                if depth == 0:
                    break
        parts = [p for p in parts if p]
        if text[0] == "[":
            return [flow(p) for p in parts]
        return dict((lambda k, v: (k.strip().strip("'\""), flow(v)))(*p.split(":", 1)) for p in parts)
    return text.strip("'\"")


KEY = re.compile(r"([^:{\[\"']+):(?:\s+(.*))?$")


def block(lines, at, indent):
    if lines[at][1].startswith("- "):
        items = []
        while at < len(lines) and lines[at][0] == indent and lines[at][1].startswith("- "):
            rest = lines[at][1][2:].strip()
            inner = indent + lines[at][1].index(rest)
            if rest[0] not in "{[" and KEY.match(rest):
                lines[at] = (inner, rest)
                item, at = block(lines, at, inner)
            else:
                item, at = flow(rest), at + 1
            items.append(item)
        return items, at
    out = {}
    while at < len(lines) and lines[at][0] == indent:
        m = KEY.match(lines[at][1])
        key, rest = m[1].strip(), m[2]
        at += 1
        if rest:
            out[key] = flow(rest)
        elif at < len(lines) and lines[at][0] > indent:
            out[key], at = block(lines, at, lines[at][0])
        else:
            out[key] = None
    return out, at


def read(path):
    lines = []
    for raw in pathlib.Path(path).read_text(encoding="utf-8").splitlines():
        line = uncommented(raw)
        if line.strip():
            lines.append((len(line) - len(line.lstrip()), line.strip()))
    return block(lines, 0, lines[0][0])[0]


def plain(value):
    """Values to SI; { value: … } to its value."""
    if isinstance(value, dict):
        return plain(value["value"]) if "value" in value else {k: plain(v) for k, v in value.items()}
    if isinstance(value, list):
        return [plain(v) for v in value]
    return si(value)


# --- a board ---

def board(path):
    """The numbers of a board: brief, parts (each with its own count), wiring, limits, plugs by name."""
    path = pathlib.Path(path)
    raw = read(path)
    shelf, plugs = {}, {}
    for folder in raw["shelf"]:
        for file in sorted((path.parent / folder).glob("*.yaml")):
            for part in read(file):
                shelf[part["id"]] = part
                if part["kind"] == "plug":
                    plugs[part["name"]] = plain(part)

    def part(value):
        if isinstance(value, str):
            value = {"use": value}
        if "use" in value:
            value = {**shelf[value["use"]], **{k: v for k, v in value.items() if k != "use"}}
        return plain(value)

    parts = {}
    for slot, value in raw["parts"].items():
        if slot == "fittings":
            parts[slot] = [part(v) for v in value]
        elif slot in ("drive",):
            parts[slot] = plain(value)
        elif slot == "pack":
            protection = part(value["protection"]) if "protection" in value else None
            parts[slot] = {**plain({k: v for k, v in value.items() if k != "protection"}), "protection": protection}
        else:
            parts[slot] = part(value)
    return {
        "name": raw["name"], "brief": plain(raw["brief"]), "parts": parts,
        "wiring": [plain(r) for r in raw["wiring"]], "limits": plain(raw["limits"]), "plugs": plugs,
    }
