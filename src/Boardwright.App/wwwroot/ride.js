// The cursor over a ride: moves without asking the program, which holds the picture and draws it anew only for another part.
import { RideTable, inUnit, worded } from "./ride-table.js";

const svgNs = "http://www.w3.org/2000/svg";

export const widthOf = root => root.getBoundingClientRect().width;

export const begin = (root, page) => new RideCursor(root, page);

class RideCursor {
  #root; #page; #hand;
  #thread = document.createElementNS(svgNs, "svg");
  #ending = new AbortController();
  #tables = new Map();
  #table = null; #frames = []; #width = 1;
  #at = null; #drag = null;
  #painting = 0; #saying = 0;

  constructor(root, page) {
    [this.#root, this.#page, this.#hand] = [root, page, root.querySelector(".hand")];
    this.#thread.setAttribute("aria-hidden", "true");
    this.#hand.replaceChildren(this.#thread);
    this.#listen();
    this.#watchWidth();
  }

  forget() {
    this.#tables.clear();
  }

  show(axis, frames, width, height) {
    [this.#frames, this.#width] = [frames, width];
    this.#thread.setAttribute("viewBox", `0 0 ${width} ${height}`);
    const next = this.#tables.get(axis);
    if (next && next !== this.#table) {
      this.#use(next);
    } else {
      this.#paint();
    }
  }

  take(axis, heading, bytes) {
    this.#tables.set(axis, new RideTable(heading, bytes));
    this.#use(this.#tables.get(axis));
  }

  end() {
    this.#ending.abort();
    clearTimeout(this.#saying);
  }

  // The cursor stays where it is along the same axis.
  #use(table) {
    const keeps = this.#table?.across.name === table.across.name && this.#at !== null;
    this.#table = table;
    this.#at = keeps ? this.#within(this.#at) : table.first;
    this.#paint();
    this.#root.dataset.reads = "yes";
  }

  #listen() {
    const does = {
      pointermove: event => this.#follow(event),
      pointerdown: event => this.#press(event),
      pointerup: event => this.#letGo(event),
      dblclick: () => this.#look(-Infinity, Infinity),
      keydown: event => this.#key(event),
    };
    const until = { signal: this.#ending.signal };
    for (const [name, act] of Object.entries(does)) {
      this.#hand.addEventListener(name, event => this.#isReady && act(event), until);
    }
    this.#hand.addEventListener("pointercancel", () => { this.#drag = null; }, until);
    this.#root.previousElementSibling.addEventListener("click", event => this.#isReady && this.#useTool(event), until);
  }

  #watchWidth() {
    let last = Math.round(widthOf(this.#root));
    const watch = new ResizeObserver(() => {
      const width = Math.round(widthOf(this.#root));
      if (width > 0 && Math.abs(width - last) > 1) {
        last = width;
        this.#page.invokeMethodAsync("Resize", width);
      }
    });
    watch.observe(this.#root);
    this.#ending.signal.addEventListener("abort", () => watch.disconnect());
  }

  get #isReady() {
    return this.#table && this.#frames.length > 0;
  }

  #follow(event) {
    const place = this.#placeOf(event);
    if (this.#drag) {
      this.#drag.to = place;
    }
    this.#move(place);
  }

  #press(event) {
    if (event.button !== 0) {
      return;
    }
    const place = this.#placeOf(event);
    if (event.pointerType === "mouse") {
      this.#drag = { from: place, to: place, x: event.clientX };
      this.#hand.setPointerCapture(event.pointerId);
    }
    this.#move(place);
  }

  #letGo(event) {
    const drag = this.#drag;
    if (drag && Math.abs(event.clientX - drag.x) > 8) {
      this.#look(Math.min(drag.from, drag.to), Math.max(drag.from, drag.to));
    }
    this.#drag = null;
    this.#paintSoon();
  }

  #key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const { from, to } = this.#frames[0], step = (to - from) / (event.shiftKey ? 20 : 200), now = this.#at === null ? from : this.#within(this.#at);
    switch (event.key) {
      case "ArrowRight": case "ArrowUp": this.#move(this.#within(now + step)); break;
      case "ArrowLeft": case "ArrowDown": this.#move(this.#within(now - step)); break;
      case "PageUp": this.#move(this.#within(now + (to - from) / 10)); break;
      case "PageDown": this.#move(this.#within(now - (to - from) / 10)); break;
      case "Home": this.#move(this.#within(from)); break;
      case "End": this.#move(this.#within(to)); break;
      case "+": case "=": this.#zoom(0.5); break;
      case "-": this.#zoom(2); break;
      case "Escape": this.#look(-Infinity, Infinity); break;
      default: return;
    }
    event.preventDefault();
    this.#say();
  }

  #useTool(event) {
    switch (event.target.closest("[data-does]")?.dataset.does) {
      case "whole": this.#look(-Infinity, Infinity); break;
      case "nearer": this.#zoom(0.5); break;
      case "farther": this.#zoom(2); break;
    }
  }

  #move(place) {
    this.#at = place;
    this.#paintSoon();
  }

  #zoom(factor) {
    const { from, to } = this.#frames[0], at = this.#at, middle = at === null || at < from || at > to ? (from + to) / 2 : at;
    this.#look(middle - (middle - from) * factor, middle + (to - middle) * factor);
  }

  // Never nearer than the numbers go, and never beyond the ride's ends.
  #look(from, to) {
    const { first, last } = this.#table, least = (last - first) / 2000;
    if (to - from < least) {
      [from, to] = [(from + to - least) / 2, (from + to + least) / 2];
    }
    if (from < first) {
      [from, to] = [first, to + first - from];
    }
    if (to > last) {
      [from, to] = [Math.max(first, from + last - to), last];
    }
    const isWhole = from <= first && to >= last;
    this.#page.invokeMethodAsync("Look", isWhole ? null : from, isWhole ? null : to);
  }

  #placeOf(event) {
    const frame = this.#frames[0], box = this.#hand.getBoundingClientRect();
    const x = (event.clientX - box.left) * this.#width / box.width;
    return this.#within(frame.from + (x - frame.left) / (frame.right - frame.left) * (frame.to - frame.from));
  }

  #within(place) {
    return Math.min(Math.max(place, this.#frames[0].from, this.#table.first), this.#frames[0].to, this.#table.last);
  }

  #paintSoon() {
    this.#painting ||= requestAnimationFrame(() => this.#paint());
  }

  // Threads and beads over the panels, and what they read.
  #paint() {
    this.#painting = 0;
    this.#thread.replaceChildren();
    if (this.#frames.length === 0) {
      return;
    }
    this.#paintSpan();
    if (this.#at !== null && this.#table) {
      this.#paintThread();
      this.#table.columns.forEach((column, i) => this.#readColumn(column, i));
      this.#readPlace();
    }
  }

  #paintSpan() {
    if (this.#drag && this.#drag.to !== this.#drag.from) {
      const { top } = this.#frames[0], [a, b] = [this.#across(this.#drag.from), this.#across(this.#drag.to)].sort((p, q) => p - q);
      this.#piece("rect", { class: "span", x: a, y: top, width: b - a, height: this.#frames.at(-1).bottom - top });
    }
  }

  #paintThread() {
    if (this.#isSeen) {
      const { top } = this.#frames[0], x = this.#across(this.#at);
      this.#piece("path", { class: "thread", d: `M${x} ${top - 6}V${this.#frames.at(-1).bottom}` });
      this.#piece("path", { class: "knot", d: `M${x - 5} ${top - 12}h10l-5 7z` });
    }
  }

  #readColumn(column, i) {
    const frame = this.#frames.find(f => f.panel === column.panel);
    const [low, high] = this.#table.valuesAt(i, this.#at);
    for (const value of column.isBand ? [low, high] : [low]) {
      const y = frame && frame.bottom - (value - frame.low) / (frame.high - frame.low) * (frame.bottom - frame.top);
      if (Number.isFinite(y) && this.#isSeen && y >= frame.top - 1 && y <= frame.bottom + 1) {
        this.#piece("circle", { class: `bead bw-line-hue${column.pen}`, cx: this.#across(this.#at), cy: y, r: 4 });
      }
    }
    this.#read(i, worded(column, low, high));
  }

  // As fine as the part that is seen can be pointed at.
  #readPlace() {
    const { first, last, across } = this.#table, { from, to } = this.#frames[0], written = place => inUnit(across, place);
    const decimals = Math.min(Math.max(2 - Math.floor(Math.log10(written(to) - written(from))), 0), 4), place = `${written(this.#at).toFixed(decimals)} ${across.unit}`;
    this.#read("place", place);
    for (const [name, value] of [["min", first], ["max", last], ["now", this.#at]]) {
      this.#hand.setAttribute(`aria-value${name}`, written(value).toFixed(3));
    }
    this.#hand.setAttribute("aria-valuetext", place);
  }

  get #isSeen() {
    return this.#at >= this.#frames[0].from && this.#at <= this.#frames[0].to;
  }

  #across(place) {
    const { from, to, left, right } = this.#frames[0];
    return left + (place - from) / (to - from) * (right - left);
  }

  #piece(name, attributes) {
    const element = document.createElementNS(svgNs, name);
    for (const [key, value] of Object.entries(attributes)) {
      element.setAttribute(key, value);
    }
    this.#thread.append(element);
  }

  #read(what, text) {
    const cell = this.#root.querySelector(`[data-reads="${what}"]`);
    if (cell) {
      cell.textContent = text;
    }
  }

  #say() {
    clearTimeout(this.#saying);
    this.#saying = setTimeout(() => {
      const words = [...this.#root.querySelectorAll(".slip div")].map(d => `${d.firstElementChild.textContent} ${d.lastElementChild.textContent}`);
      this.#read("said", words.join("; "));
    }, 250);
  }
}
