"""Twenty belt drives laid along a tape, in millimetres, zero at the hanger's end, outward positive.

Plain arithmetic, written from the description of the parts and not from the program. Writes stacks.json:

    python3 tests/independent/stacks.py > tests/independent/stacks.json

Every dimension is a maker's: 0.2 mm is one standard deviation, and 0.4 mm the most it is off.
"""
import json
import math

WASHER, FLANGE, SPACER, BEARING_608, NUT = 1.0, 1.0, 10.0, 7.0, 8.0
SIGMA, MOST = 0.2, 0.4

#  name                      plate thick shaft | motor pulley        | wheel pulley        | belt cover      wheel axle
#                            from               length face  offset    length face offset          depth stand seat  overhang from hanger
TABLE = [
    ("usual",                 8.0,  7.0, 38.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("turned pulley",         8.0,  7.0, 38.0,   24.0, 16.0,  1.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("deep cover",            8.0,  7.0, 38.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 34.0,  6.0, 12.0, 71.0, None),
    ("plate far in",         21.5,  7.0, 52.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("plate at the end",      0.0,  7.0, 38.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("plate a little in",     4.5,  7.0, 38.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("short shaft",           8.0,  7.0, 25.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("long shaft",            8.0,  7.0, 45.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 25.5,  6.0, 12.0, 71.0, None),
    ("thin plate",            8.0,  4.0, 34.0,   22.0, 16.0,  5.0,     20.0, 16.0,  2.0,     15.0, 27.0,  5.0, 10.0, 68.0, None),
    ("narrow belt",          10.0,  6.0, 36.0,   20.0, 10.0,  8.0,     18.0, 10.0,  1.0,      9.0, 24.0,  8.0, 12.0, 62.0, None),
    ("broad belt",           12.0,  8.0, 48.0,   34.0, 26.0,  7.0,     30.0, 26.0,  2.0,     25.0, 34.0,  8.0, 14.0, 80.0, None),
    ("two washers",           8.0,  7.0, 40.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 29.0,  6.0, 12.0, 71.0, 2.0),
    ("over the hanger",      20.0,  7.0, 40.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 29.0,  6.0, 12.0, 56.0, -9.0),
    ("long wheel pulley",    10.0,  7.0, 40.0,   24.0, 16.0,  7.0,     34.0, 16.0,  2.0,     15.0, 30.0,  6.0, 10.0, 76.0, None),
    ("wheel teeth outside",  12.0,  7.0, 44.0,   24.0, 16.0,  7.0,     24.0, 16.0,  7.0,     15.0, 32.0,  8.0, 12.0, 76.0, None),
    ("deep seat",             8.0,  7.0, 38.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 27.0,  6.0, 20.0, 71.0, None),
    ("no seat",               8.0,  7.0, 38.0,   24.0, 16.0,  7.0,     21.0, 16.0,  1.0,     15.0, 27.0,  6.0,  0.0, 71.0, None),
    ("unlike faces",          9.0,  6.0, 37.0,   26.0, 18.0,  6.0,     22.0, 16.0,  3.0,     15.0, 30.0,  5.0, 11.0, 70.0, None),
    ("motor teeth unknown",   8.0,  7.0, 38.0,   24.0, 16.0, None,     21.0, 16.0,  1.0,     15.0, 29.0,  6.0, 12.0, 71.0, None),
    ("all teeth unknown",    10.0,  7.0, 40.0,   24.0, 16.0, None,     22.0, 16.0, None,     15.0, 29.0,  6.0, 12.0, 71.0, None),
]


def off(terms, half_ranges=()):
    """Worst and likely error of a sum: how often each dimension counts, and half of each range that nobody measured."""
    worst = sum(abs(t) * MOST for t in terms) + sum(half_ranges)
    squares = sum((t * SIGMA) ** 2 for t in terms) + sum(h * h / 3 for h in half_ranges)
    return worst, min(worst, 2 * math.sqrt(squares))


def worked(row):
    (name, plate_from, thick, shaft, m_length, m_face, m_offset, w_length, w_face, w_offset,
     belt, depth, standoff, seat, overhang, from_hanger) = row
    unknown = []
    m_known, w_known = m_offset is not None, w_offset is not None
    if not m_known:                      # anywhere between two flanges
        m_offset = (m_length - m_face) / 2
        unknown.append((m_length - m_face) / 2 - FLANGE)
    if not w_known:
        w_offset = (w_length - w_face) / 2
        unknown.append((w_length - w_face) / 2 - FLANGE)

    plate = -plate_from
    shaft_end = plate - thick + shaft
    cover = plate + depth + standoff
    begin = WASHER if from_hanger is None else from_hanger
    plane = begin + w_offset + w_face / 2
    inner = plane - m_face / 2 - m_offset
    gap = inner - plate
    if gap < -1e-9:                      # the plate stops it
        inner = plate
    outer = inner + m_length
    on_shaft = min(max(shaft_end - inner, 0), m_length)

    # Dimensions that stand between the plate and the pulley's inner end, and how often each counts.
    place = [1, .5, .5] + [1] * m_known + [1] * w_known + [1] * (from_hanger is not None)
    gap_worst, gap_likely = off(place, unknown)
    if gap < -1e-9:
        cover_worst, cover_likely = off([1, 1, 1])
    else:
        cover_worst, cover_likely = off(place + [1, 1, 1], unknown)

    out = max(w_length - seat, min(w_length, w_offset + w_face + FLANGE))
    wheel = begin + out
    bearing = wheel + seat
    nut_end = bearing + 2 * BEARING_608 + SPACER + WASHER + NUT

    return {
        "name": name,
        "given": {
            "mount.plate_from_wheel": plate_from, "mount.plate_thickness": thick, "motor.shaft_length": shaft,
            "motor_pulley.length": m_length, "motor_pulley.face_width": m_face,
            "motor_pulley.face_offset": m_offset if m_known else None,
            "wheel_pulley.length": w_length, "wheel_pulley.face_width": w_face,
            "wheel_pulley.face_offset": w_offset if w_known else None,
            "belt.width": belt, "mount.cover_depth": depth, "mount.cover_standoff": standoff,
            "wheels.seat_offset": seat, "rear_truck.axle_overhang": overhang, "drive.pulley_from_hanger": from_hanger,
        },
        "found": {
            "plane": plane, "pulley_inner": inner, "pulley_outer": outer, "shaft_end": shaft_end, "from_plate": gap,
            "from_plate_worst": gap_worst, "from_plate_likely": gap_likely, "misalignment": max(0, -gap),
            "on_shaft": on_shaft, "belt_past_shaft": plane + belt / 2 - shaft_end,
            "shaft_under_cover": cover - shaft_end, "pulley_under_cover": cover - outer,
            "pulley_under_cover_worst": cover_worst, "pulley_under_cover_likely": cover_likely,
            "wheel": wheel, "bearing": bearing, "thread_left": overhang - nut_end,
        },
    }


print(json.dumps([worked(row) for row in TABLE], indent=1))
