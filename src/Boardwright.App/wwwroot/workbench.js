// What only the browser can do: keys, drafts, scrolling, and finding the program again after it was stopped.
const drafts = "boardwright.draft.";
const boxKeys = ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "q", ",", "."];

function listen(keys) {
  document.addEventListener("keydown", event => {
    const typing = event.target.closest("input, textarea, select, dialog[open]");
    if (event.key === "Escape" && typing?.matches("input, textarea, select")) {
      typing.blur();
      return;
    }
    if (typing || event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) {
      return;
    }
    if (event.target.closest("[data-box]") && boxKeys.includes(event.key)) {
      event.preventDefault();
      keys.invokeMethodAsync("Nudge", event.key, event.shiftKey);
      return;
    }
    if (event.key === "d") {
      turnTheme();
    } else if (event.key.length === 1 || event.key === "ArrowLeft" || event.key === "ArrowRight") {
      keys.invokeMethodAsync("Press", event.key);
    }
  });
  document.addEventListener("keyup", event => {
    if (event.target.closest("[data-box]") && boxKeys.includes(event.key)) {
      keys.invokeMethodAsync("Nudge", "", false);
    }
  });
  document.addEventListener("click", event => {
    const line = event.target.closest("[data-line]")?.dataset.line;
    const text = document.getElementById("board-text");
    if (line && text) {
      const lines = text.value.split("\n");
      const start = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
      text.focus();
      text.setSelectionRange(start, start + lines[line - 1].length);
    }
  });
}

function watchDrawings(keys) {
  let from = null, share = 0, waiting = false;
  const send = () => {
    waiting = false;
    keys.invokeMethodAsync("Lean", share);
  };
  document.addEventListener("pointerdown", event => {
    const figure = event.target.closest("[data-lean]");
    if (figure && event.button === 0 && !event.target.closest("button")) {
      from = { x: event.clientX, share: Number(figure.dataset.lean), width: figure.clientWidth, moved: false };
    }
  });
  document.addEventListener("pointermove", event => {
    if (!from || Math.abs(event.clientX - from.x) < 3 && !from.moved) {
      return;
    }
    from.moved = true;
    event.preventDefault();
    share = Math.max(-1, Math.min(1, from.share + 4 * (event.clientX - from.x) / from.width));
    if (!waiting) {
      waiting = true;
      requestAnimationFrame(send);
    }
  });
  document.addEventListener("pointerup", event => {
    const moved = from?.moved;
    from = null;
    const drawn = moved || event.target.closest("[data-box]") ? null : event.target.closest(".drawn");
    const pin = drawn && event.target.closest("[data-finding]");
    const part = drawn && event.target.closest("[data-part]");
    if (pin) {
      keys.invokeMethodAsync("Point", pin.dataset.finding, true);
    } else if (part) {
      keys.invokeMethodAsync("Point", part.dataset.part.replace("parts.", ""), false);
    }
  });
  document.addEventListener("pointercancel", () => from = null);
}

// Things in the box follow the pointer; how far it went is told in millimetres of the thing itself.
function watchBox(keys) {
  let held = null, waiting = false;
  const send = done => keys.invokeMethodAsync("Drag", held.name, held.dx * held.scale, held.dy * held.scale, done);
  document.addEventListener("pointerdown", event => {
    const field = event.target.closest("[data-box]");
    const thing = field && event.target.closest("[data-part^='layout.']");
    const svg = field?.querySelector("svg");
    if (thing && svg && event.button === 0) {
      const scale = svg.viewBox.baseVal.width / svg.clientWidth / Number(svg.dataset.unitsPerMm);
      held = { name: thing.dataset.part.replace("layout.", ""), x: event.clientX, y: event.clientY, dx: 0, dy: 0, scale, moved: false };
      field.setPointerCapture(event.pointerId);
      field.focus({ preventScroll: true });
    }
  });
  document.addEventListener("pointermove", event => {
    if (!held) {
      return;
    }
    held.dx = event.clientX - held.x;
    held.dy = event.clientY - held.y;
    if (!held.moved && Math.hypot(held.dx, held.dy) < 3) {
      return;
    }
    held.moved = true;
    event.preventDefault();
    if (!waiting) {
      waiting = true;
      requestAnimationFrame(() => {
        waiting = false;
        if (held) {
          send(false);
        }
      });
    }
  });
  const drop = () => {
    if (held) {
      if (!held.moved) {
        held.dx = held.dy = 0;
      }
      send(true);
    }
    held = null;
  };
  document.addEventListener("pointerup", drop);
  document.addEventListener("pointercancel", () => {
    if (held) {
      held.dx = held.dy = 0;
      drop();
    }
  });
}

export function draft(board, text) {
  if (text === null) {
    localStorage.removeItem(drafts + board);
  } else {
    localStorage.setItem(drafts + board, text);
  }
}

// Takes the page over, and says what was typed on this board and never saved.
export function begin(keys, board) {
  listen(keys);
  watchDrawings(keys);
  watchBox(keys);
  return board === null ? null : localStorage.getItem(drafts + board);
}

// The tour comes by itself once: it is over when it was left or gone through.
export function isNew() {
  return localStorage.getItem("boardwright.toured") === null;
}

export function pointAt(place) {
  if (place === null) {
    delete document.documentElement.dataset.tour;
    localStorage.setItem("boardwright.toured", "yes");
  } else {
    document.documentElement.dataset.tour = place;
    // The page that the tour goes to may still be on its way.
    requestAnimationFrame(() => document.querySelector(`[data-stop~="${place}"]`)?.scrollIntoView({ block: "start" }));
  }
}

export function open(dialog) {
  document.getElementById(dialog)?.showModal();
}

function turnTheme() {
  const order = ["auto", "light", "dark"];
  const next = order[(order.indexOf(document.documentElement.dataset.theme) + 1) % order.length];
  document.documentElement.dataset.theme = next;
  localStorage.setItem("boardwright.theme", next);
}

globalThis.boardwright ??= {
  see(id) {
    document.getElementById(id)?.scrollIntoView({ block: "nearest" });
  },
};

if (!globalThis.boardwright.isStarted) {
  globalThis.boardwright.isStarted = true;
  // A page that came back after the program did begins anew: the draft in this browser holds what was typed.
  const lost = document.getElementById("components-reconnect-modal");
  lost?.addEventListener("components-reconnect-state-changed", event => {
    if (event.detail.state === "rejected") {
      location.reload();
    }
  });
  Blazor.start({ circuit: {
    // Every browser that can show these pages has web sockets: asking for other ways first costs a round trip.
    configureSignalR: builder => builder.withUrl("_blazor", { skipNegotiation: true, transport: 1 }),
    reconnectionOptions: { maxRetries: 100000, retryIntervalMilliseconds: n => Math.min(5000, 300 * (n + 1)) },
  } });
}
