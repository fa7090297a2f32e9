#!/bin/sh
# The same ride by Boardwright, CVODE and SciPy, in one run: builds, rides, compares, prints the table.
# Installs nothing unless --install is given. Leaves with 1 where a target is missed or the solvers disagree.
set -eu
cd "$(dirname "$0")/../.."
python=/usr/bin/python3

if [ "${1:-}" = --install ]; then
    apt-get update && apt-get install -y --no-install-recommends gcc libc6-dev libsundials-dev python3-scipy
fi
if ! [ -e /usr/include/cvode/cvode.h ] || ! "$python" -c 'import scipy' 2>/dev/null; then
    echo "Needs Debian's gcc, libsundials-dev and python3-scipy; $0 --install installs them." >&2
    exit 2
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# One core for each: nobody's linear algebra may spread over two.
export OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1

dotnet build bench/Boardwright.Bench -c Release -v q >"$work/build.log" || { cat "$work/build.log" >&2; exit 1; }
dotnet artifacts/bin/Boardwright.Bench/release/Boardwright.Bench.dll solvers "$work/case.json"
"$python" bench/solvers/compare.py header "$work/case.json" >"$work/case.h"
gcc -O3 -march=native -std=c11 -Wall -Wextra -Werror -I"$work" bench/solvers/ride.c -o "$work/ride" \
    -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lm

pairs=
for ride in gentle hills; do
    # shellcheck disable=SC2046 # four numbers, four words
    "$work/ride" $("$python" bench/solvers/compare.py numbers "$work/case.json" "$ride") >"$work/$ride.rows"
    until=$("$python" -c 'import json, sys; print(json.loads(sys.stdin.readline())["end"][0])' <"$work/$ride.rows")
    "$python" bench/solvers/ride.py "$work/case.json" "$ride" "$until" >>"$work/$ride.rows"
    pairs="$pairs $ride=$work/$ride.rows"
done
# shellcheck disable=SC2086 # a word for each ride
"$python" bench/solvers/compare.py table "$work/case.json" $pairs
