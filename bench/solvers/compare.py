"""Ties the solvers together: writes the numbers for C, and prints what each took to the same error.

compare.py header CASE.json          the board and the plan as C constants
compare.py numbers CASE.json RIDE    the four numbers of a ride
compare.py table CASE.json RIDE=ROWS ...
"""

import json
import sys

ERRORS = (1e-3, 1e-4)
STATED = "distance, charge used, and the rises of winding, case, controller and cells"


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def header(document):
    def constant(name, value):
        if not isinstance(value, list):
            return f"static const double {name} = {value!r};"
        if isinstance(value[0], list):
            rows = ", ".join("{" + ", ".join(map(repr, row)) + "}" for row in value)
            return f"static const double {name}[{len(value)}][{len(value[0])}] = {{{rows}}};"
        return f"enum {{ {name.upper()} = {len(value)} }};\nstatic const double {name}[{len(value)}] = {{{', '.join(map(repr, value))}}};"

    return "\n".join(constant(k, v) for k, v in {**document["board"], **document["plan"]}.items())


def errors_of(end, reference, document):
    """Each result against the reference's, as a part of it. A ride that ends at the place is late by a time; late is far."""
    start, ambient = document["plan"]["start_charge"], document["board"]["ambient"]
    seconds, metres, speed = reference[:3]
    late = abs(end[1] - metres - (end[0] - seconds) * speed) / metres
    charge = abs(end[3] - reference[3]) / (start - reference[3])
    return [late, charge, *(abs(a - b) / (b - ambient) for a, b in zip(end[6:], reference[6:]))]


def fastest(rows, error):
    """The fastest setting that keeps within an error, among those whose every tighter setting does so too: no lucky hits."""
    kept = None
    for row in sorted(rows, key=lambda r: r["setting"]):
        if row["error"] > error:
            break
        if kept is None or row["seconds"] < kept["seconds"]:
            kept = row
    return kept


def table(document, ride, rows):
    reference = next(r for r in rows if r["solver"] == "reference")
    own = next(r for r in document["rides"] if r["name"] == ride)["rows"]
    rows = [r for r in rows if r["solver"] != "reference"] + [{"solver": "Boardwright", "calls": 0, **r} for r in own]
    # Cutting the road belongs to the route, not to the ride; what it adds where a road is ridden only once has a row of its own.
    rows += [{"solver": "Boardwright, road cut anew", "calls": 0, **r, "seconds": r["seconds"] + r["cut_seconds"]} for r in own]
    by_solver = {}
    for row in rows:
        row["error"] = max(errors_of(row["end"], reference["end"], document))
        by_solver.setdefault(row["solver"], []).append(row)

    finest = {solver: min(group, key=lambda r: r["error"])["error"] for solver, group in by_solver.items()}
    apart = [solver for solver, error in finest.items() if error > ERRORS[-1]]
    print(f"### {ride}\n")
    print(f"All agree: at its best every solver is within {max(finest.values()):.1e} of the reference.\n" if not apart
          else f"Never within {ERRORS[-1]:g} of the reference: {', '.join(apart)}.\n")
    met = not apart
    for error in ERRORS:
        chosen = [(solver, row) for solver, group in by_solver.items() if (row := fastest(group, error))]
        unit = dict(chosen)["Boardwright"]["seconds"]
        print(f"Error of at most {error * 100:g} % of {STATED}:\n")
        print("| Solver | Setting | Steps | Rates asked | Error | Time, ms | Times Boardwright |")
        print("|---|---:|---:|---:|---:|---:|---:|")
        for solver, row in sorted(chosen, key=lambda c: c[1]["seconds"]):
            setting = f"{row['setting']:g} m" if solver.startswith("Boardwright") else f"{row['setting']:.1e}"
            print(f"| {solver} | {setting} | {row['steps'] or '—'} | {row['calls'] or '—'} | {row['error']:.1e} | {row['seconds'] * 1e3:.3f} | {row['seconds'] / unit:.2f} |")
        # Held against the ride alone, and against the stricter sum with the cutting of its road.
        for own_row in ("Boardwright", "Boardwright, road cut anew"):
            own_seconds = dict(chosen)[own_row]["seconds"]
            best = {family: min((r["seconds"] for s, r in chosen if s.startswith(family)), default=float("inf")) / own_seconds for family in ("CVODE", "SciPy")}
            verdicts = [("not slower than CVODE", best["CVODE"], 1), ("50 times as fast as SciPy", best["SciPy"], 50)]
            print(f"\n{own_row}: " + "; ".join(f"{what}, {'met' if ratio >= least else '**missed**'} at {ratio:.1f}" for what, ratio, least in verdicts) + ".")
            met &= error != ERRORS[0] or all(ratio >= least for _, ratio, least in verdicts)
        print()
    return met


def main(command, path, *rest):
    document = read(path)
    if command == "header":
        print(header(document))
    elif command == "numbers":
        ride = next(r for r in document["rides"] if r["name"] == rest[0])
        print(ride["swell"], ride["swell_metres"], ride["grade"], ride["hill_metres"])
    else:
        results = []
        for pair in rest:
            ride, rows = pair.split("=", 1)
            with open(rows, encoding="utf-8") as file:
                results.append(table(document, ride, [json.loads(line) for line in file]))
        sys.exit(0 if all(results) else 1)


if __name__ == "__main__":
    main(*sys.argv[1:])
