// Keys that are pressed outside any field.
const boxKeys = ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "q", ",", "."];

export function followKeys(program, until) {
  document.addEventListener("keydown", event => press(event, program), until);
  document.addEventListener("keyup", event => {
    if (isForBox(event)) {
      program.invokeMethodAsync("Nudge", "", false);
    }
  }, until);
}

function press(event, program) {
  const typing = event.target.closest("input, textarea, select, dialog[open]");
  if (event.key === "Escape" && typing?.matches("input, textarea, select")) {
    typing.blur();
  } else if (typing || event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) {
    return;
  } else if (isForBox(event)) {
    event.preventDefault();
    program.invokeMethodAsync("Nudge", event.key, event.shiftKey);
  } else if (event.key === "d") {
    turnTheme();
  } else if (event.key.length === 1 || event.key === "ArrowLeft" || event.key === "ArrowRight") {
    program.invokeMethodAsync("Press", event.key);
  }
}

const isForBox = event => event.target.closest("[data-box]") && boxKeys.includes(event.key);

function turnTheme() {
  const order = ["auto", "light", "dark"], { dataset } = document.documentElement;
  dataset.theme = order[(order.indexOf(dataset.theme) + 1) % order.length];
  localStorage.setItem("boardwright.theme", dataset.theme);
}
