// What only the browser can do: keys, drafts, scrolling, and finding the program again after it was stopped.
const drafts = "boardwright.draft.";

export function listen(keys) {
  document.addEventListener("keydown", event => {
    const typing = event.target.closest("input, textarea, select, dialog[open]");
    if (event.key === "Escape" && typing?.matches("input, textarea, select")) {
      typing.blur();
      return;
    }
    if (typing || event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) {
      return;
    }
    if (event.key === "d") {
      turnTheme();
    } else if (event.key.length === 1 || event.key === "ArrowLeft" || event.key === "ArrowRight") {
      keys.invokeMethodAsync("Press", event.key);
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

export function draft(board, text) {
  if (text === null) {
    localStorage.removeItem(drafts + board);
  } else {
    localStorage.setItem(drafts + board, text);
  }
}

export function draftOf(board) {
  return localStorage.getItem(drafts + board);
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
  Blazor.start({ circuit: { reconnectionOptions: { maxRetries: 100000, retryIntervalMilliseconds: n => Math.min(5000, 300 * (n + 1)) } } });
}
