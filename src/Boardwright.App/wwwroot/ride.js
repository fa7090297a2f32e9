// The cursor over a ride: moves without asking the program, which holds the picture and draws it anew only for another part.
const svgNs = "http://www.w3.org/2000/svg";

export function widthOf(root) {
  return root.getBoundingClientRect().width;
}

export function begin(root, page) {
  const hand = root.querySelector(".hand");
  const tools = root.previousElementSibling;
  const ending = new AbortController();
  const until = { signal: ending.signal };
  const tables = new Map();
  let frames = [], size = { width: 1, height: 1 }, table = null, at = null, drag = null, waiting = 0, saying = 0;

  const thread = document.createElementNS(svgNs, "svg");
  thread.setAttribute("aria-hidden", "true");
  hand.replaceChildren(thread);

  // Threads and beads over the panels.
  function paint() {
    waiting = 0;
    thread.replaceChildren();
    if (!frames.length) {
      return;
    }
    const frame = frames[0];
    if (drag && drag.to !== drag.from) {
      const [a, b] = [across(frame, drag.from), across(frame, drag.to)].sort((p, q) => p - q);
      piece("rect", { class: "span", x: a, y: frame.top, width: b - a, height: frames.at(-1).bottom - frame.top });
    }
    if (at === null || !table) {
      return;
    }
    const x = across(frame, at);
    if (at >= frame.from && at <= frame.to) {
      piece("path", { class: "thread", d: `M${x} ${frame.top - 6}V${frames.at(-1).bottom}` });
      piece("path", { class: "knot", d: `M${x - 5} ${frame.top - 12}h10l-5 7z` });
    }
    table.columns.forEach((column, i) => {
      const field = frames.find(f => f.panel === column.panel);
      const [low, high] = valuesAt(i);
      for (const value of column.isBand ? [low, high] : [low]) {
        const y = field && field.bottom - (value - field.low) / (field.high - field.low) * (field.bottom - field.top);
        if (Number.isFinite(y) && at >= field.from && at <= field.to && y >= field.top - 1 && y <= field.bottom + 1) {
          piece("circle", { class: `bead bw-line-hue${column.pen}`, cx: x, cy: y, r: 4 });
        }
      }
      read(i, worded(column, low, high));
    });
    // As fine as the part that is seen can be pointed at.
    const span = inUnit(table.across, frame.to) - inUnit(table.across, frame.from);
    const place = `${inUnit(table.across, at).toFixed(Math.min(Math.max(2 - Math.floor(Math.log10(span)), 0), 4))} ${table.across.unit}`;
    read("place", place);
    hand.setAttribute("aria-valuemin", inUnit(table.across, table.x[0]).toFixed(3));
    hand.setAttribute("aria-valuemax", inUnit(table.across, table.x.at(-1)).toFixed(3));
    hand.setAttribute("aria-valuenow", inUnit(table.across, at).toFixed(3));
    hand.setAttribute("aria-valuetext", place);
  }

  function piece(name, attributes) {
    const element = document.createElementNS(svgNs, name);
    for (const [key, value] of Object.entries(attributes)) {
      element.setAttribute(key, value);
    }
    thread.append(element);
  }

  function read(what, text) {
    const cell = root.querySelector(`[data-reads="${what}"]`);
    if (cell) {
      cell.textContent = text;
    }
  }

  const across = (frame, value) => frame.left + (value - frame.from) / (frame.to - frame.from) * (frame.right - frame.left);

  function placeOf(event) {
    const frame = frames[0], box = hand.getBoundingClientRect();
    const x = (event.clientX - box.left) * size.width / box.width;
    return within(frame.from + (x - frame.left) / (frame.right - frame.left) * (frame.to - frame.from));
  }

  const within = value => Math.min(Math.max(value, frames[0].from, table.x[0]), frames[0].to, table.x.at(-1));

  function valuesAt(i) {
    const next = upper(table.x, at), before = Math.max(next - 1, 0), after = Math.min(next, table.rows - 1);
    const run = table.x[after] - table.x[before], part = run > 0 ? (at - table.x[before]) / run : 0;
    return table.data[i].map(y => y[before] + (y[after] - y[before]) * part);
  }

  function move(value) {
    at = value;
    waiting ||= requestAnimationFrame(paint);
  }

  function say() {
    clearTimeout(saying);
    saying = setTimeout(() => {
      const words = [...root.querySelectorAll(".slip div")].map(d => `${d.firstElementChild.textContent} ${d.lastElementChild.textContent}`);
      read("said", words.join("; "));
    }, 250);
  }

  function look(from, to) {
    const [first, last] = [table.x[0], table.x.at(-1)];
    const least = (last - first) / 2000;
    if (to - from < least) {
      [from, to] = [(from + to - least) / 2, (from + to + least) / 2];
    }
    if (from < first) {
      [from, to] = [first, to + first - from];
    }
    if (to > last) {
      [from, to] = [Math.max(first, from + last - to), last];
    }
    const whole = from <= first && to >= last;
    page.invokeMethodAsync("Look", whole ? null : from, whole ? null : to);
  }

  function zoom(factor) {
    const { from, to } = frames[0], middle = at === null || at < from || at > to ? (from + to) / 2 : at;
    look(middle - (middle - from) * factor, middle + (to - middle) * factor);
  }

  const ready = () => table && frames.length;

  hand.addEventListener("pointermove", event => {
    if (ready()) {
      const place = placeOf(event);
      if (drag) {
        drag.to = place;
      }
      move(place);
    }
  }, until);
  hand.addEventListener("pointerdown", event => {
    if (ready() && event.button === 0) {
      const place = placeOf(event);
      if (event.pointerType === "mouse") {
        drag = { from: place, to: place, x: event.clientX };
        hand.setPointerCapture(event.pointerId);
      }
      move(place);
    }
  }, until);
  hand.addEventListener("pointerup", event => {
    if (drag && ready() && Math.abs(event.clientX - drag.x) > 8) {
      look(Math.min(drag.from, drag.to), Math.max(drag.from, drag.to));
    }
    drag = null;
    waiting ||= requestAnimationFrame(paint);
  }, until);
  hand.addEventListener("pointercancel", () => { drag = null; }, until);
  hand.addEventListener("dblclick", () => { if (ready()) { look(-Infinity, Infinity); } }, until);
  hand.addEventListener("keydown", event => {
    if (!ready() || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const { from, to } = frames[0], step = (to - from) / (event.shiftKey ? 20 : 200), now = at === null ? from : within(at);
    switch (event.key) {
      case "ArrowRight": case "ArrowUp": move(within(now + step)); break;
      case "ArrowLeft": case "ArrowDown": move(within(now - step)); break;
      case "PageUp": move(within(now + (to - from) / 10)); break;
      case "PageDown": move(within(now - (to - from) / 10)); break;
      case "Home": move(within(from)); break;
      case "End": move(within(to)); break;
      case "+": case "=": zoom(0.5); break;
      case "-": zoom(2); break;
      case "Escape": look(-Infinity, Infinity); break;
      default: return;
    }
    event.preventDefault();
    say();
  }, until);
  tools.addEventListener("click", event => {
    const does = event.target.closest("[data-does]")?.dataset.does;
    if (does && ready()) {
      does === "whole" ? look(-Infinity, Infinity) : zoom(does === "nearer" ? 0.5 : 2);
    }
  }, until);

  let last = Math.round(widthOf(root));
  const watch = new ResizeObserver(() => {
    const width = Math.round(widthOf(root));
    if (width > 0 && Math.abs(width - last) > 1) {
      last = width;
      page.invokeMethodAsync("Resize", width);
    }
  });
  watch.observe(root);

  // The cursor stays where it is along the same axis.
  function use(next) {
    const keeps = table && table.across.name === next.across.name && at !== null;
    table = next;
    at = keeps ? within(at) : table.x[0];
    paint();
    root.dataset.reads = "yes";
  }

  return {
    forget() {
      tables.clear();
    },
    show(axis, newFrames, width, height) {
      [frames, size] = [newFrames, { width, height }];
      thread.setAttribute("viewBox", `0 0 ${width} ${height}`);
      const next = tables.get(axis);
      if (next && next !== table) {
        use(next);
      } else {
        paint();
      }
    },
    take(axis, heading, bytes) {
      const numbers = new Float32Array(bytes.slice().buffer);
      const column = i => numbers.subarray(i * heading.rows, (i + 1) * heading.rows);
      const data = [];
      let next = 1;
      for (const { isBand } of heading.columns) {
        data.push(isBand ? [column(next), column(next + 1)] : [column(next)]);
        next += isBand ? 2 : 1;
      }
      tables.set(axis, { ...heading, x: column(0), data });
      use(tables.get(axis));
    },
    end() {
      ending.abort();
      watch.disconnect();
      clearTimeout(saying);
    },
  };
}

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

const inUnit = (measure, si) => (si - measure.offset) / measure.factor;

// Three significant digits, as everywhere on the pages.
function figures(value) {
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)) + 1e-12);
  return String(Number(value.toFixed(Math.min(Math.max(2 - magnitude, 0), 6))) + 0);
}

function worded({ measure, isBand }, low, high) {
  if (!Number.isFinite(low)) {
    return "—";
  }
  const [a, b] = [figures(inUnit(measure, low)), figures(inUnit(measure, high ?? low))];
  return `${isBand && a !== b ? `${a} to ${b}` : a} ${measure.unit}`.trim();
}
