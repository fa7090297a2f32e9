// Finds places of a page: findings, dialogs, what the tour speaks of, and lines of the board file's text.
export const see = id => document.getElementById(id)?.scrollIntoView({ block: "nearest" });

export const open = dialog => document.getElementById(dialog)?.showModal();

// The tour comes by itself once: it is over when it was left or gone through.
export const isNew = () => localStorage.getItem("boardwright.toured") === null;

export function pointAt(place) {
  const { dataset } = document.documentElement;
  if (place === null) {
    delete dataset.tour;
    localStorage.setItem("boardwright.toured", "yes");
    return;
  }
  dataset.tour = place;
  // The page that the tour goes to may still be on its way.
  requestAnimationFrame(() => document.querySelector(`[data-stop~="${place}"]`)?.scrollIntoView({ block: "start" }));
}

export function followLines(until) {
  document.addEventListener("click", event => {
    const line = event.target.closest("[data-line]")?.dataset.line, text = document.getElementById("board-text");
    if (line && text) {
      const lines = text.value.split("\n"), start = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
      text.focus();
      text.setSelectionRange(start, start + lines[line - 1].length);
    }
  }, until);
}
