// The numbers of a ride in SI units, column by column, and how a place on them is read.
export class RideTable {
  #x; #data = [];

  constructor(heading, bytes) {
    const numbers = new Float32Array(bytes.slice().buffer);
    let next = 0;
    const column = () => numbers.subarray(next * heading.rows, ++next * heading.rows);
    [this.across, this.columns] = [heading.across, heading.columns];
    this.#x = column();
    [this.first, this.last] = [this.#x[0], this.#x.at(-1)];
    for (const { isBand } of heading.columns) {
      this.#data.push(isBand ? [column(), column()] : [column()]);
    }
  }

  // What a column holds at a place: one value of a line, both of a band.
  valuesAt(i, place) {
    const x = this.#x, next = upper(x, place), before = Math.max(next - 1, 0), after = Math.min(next, x.length - 1);
    const run = x[after] - x[before], part = run > 0 ? (place - x[before]) / run : 0;
    return this.#data[i].map(y => y[before] + (y[after] - y[before]) * part);
  }
}

export function worded({ measure, isBand }, low, high) {
  if (!Number.isFinite(low)) {
    return "—";
  }
  const [a, b] = [low, high ?? low].map(value => figures(inUnit(measure, value)));
  return `${isBand && a !== b ? `${a} to ${b}` : a} ${measure.unit}`.trim();
}

// Three significant digits, or all whole ones, and six decimals at most, as everywhere on the pages.
const three = new Intl.NumberFormat("en", { maximumSignificantDigits: 3, maximumFractionDigits: 0, roundingPriority: "morePrecision", useGrouping: false, signDisplay: "negative" });

const figures = value => three.format(Math.abs(value) < 1e-4 ? value.toFixed(6) : value);

export const inUnit = (measure, si) => (si - measure.offset) / measure.factor;

function upper(x, value) {
  let low = 0, high = x.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (x[middle] < value) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}
