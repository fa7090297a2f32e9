// What the pointer does to drawings: it leans the deck, moves things in the box, and looks at parts and pins.
export function followPointer(program, until) {
  const lean = ({ share, dx, width }) => program.invokeMethodAsync("Lean", Math.max(-1, Math.min(1, share + 4 * dx / width)));
  const carry = ({ name, dx, dy, scale }, isDone) => program.invokeMethodAsync("Drag", name, dx * scale, dy * scale, isDone);
  follow({
    take: takeDeck,
    isFar: dx => Math.abs(dx) >= 3,
    move: lean,
    drop: (deck, event) => deck?.isMoved ? lean(deck) : point(event, program),
  }, until);
  follow({
    take: takeThing,
    isFar: (dx, dy) => Math.hypot(dx, dy) >= 3,
    move: thing => carry(thing, false),
    drop: thing => thing && carry(thing, true),
    cancel: thing => carry({ ...thing, dx: 0, dy: 0 }, true),
  }, until);
}

function takeDeck({ target }) {
  const figure = target.closest("[data-lean]");
  return figure && !target.closest("button") ? { share: Number(figure.dataset.lean), width: figure.clientWidth } : null;
}

// How far a thing went is told in millimetres of the thing itself.
function takeThing({ target, pointerId }) {
  const field = target.closest("[data-box]"), thing = field && target.closest("[data-part^='layout.']"), svg = field?.querySelector("svg");
  if (!thing || !svg) {
    return null;
  }
  field.setPointerCapture(pointerId);
  field.focus({ preventScroll: true });
  return { name: thing.dataset.part.replace("layout.", ""), scale: svg.viewBox.baseVal.width / svg.clientWidth / Number(svg.dataset.unitsPerMm) };
}

function point({ target }, program) {
  const drawn = target.closest("[data-box]") ? null : target.closest(".drawn");
  const pin = drawn && target.closest("[data-finding]"), part = drawn && target.closest("[data-part]");
  if (pin) {
    program.invokeMethodAsync("Point", pin.dataset.finding, true);
  } else if (part) {
    program.invokeMethodAsync("Point", part.dataset.part.replace("parts.", ""), false);
  }
}

// Takes something at a press and follows the pointer with it, once a frame, until it is let go.
function follow({ take, isFar, move, drop, cancel }, until) {
  let held = null, isWaiting = false;
  const on = (name, act) => document.addEventListener(name, act, until);
  const letGo = then => event => {
    const dropped = held;
    held = null;
    then(dropped, event);
  };
  on("pointerdown", event => {
    const taken = event.button === 0 ? take(event) : null;
    held = taken ? { ...taken, x: event.clientX, y: event.clientY, dx: 0, dy: 0, isMoved: false } : held;
  });
  on("pointermove", event => {
    const dx = event.clientX - held?.x, dy = event.clientY - held?.y;
    if (!held || !held.isMoved && !isFar(dx, dy)) {
      return;
    }
    event.preventDefault();
    Object.assign(held, { dx, dy, isMoved: true });
    if (!isWaiting) {
      isWaiting = true;
      requestAnimationFrame(() => {
        isWaiting = false;
        if (held?.isMoved) {
          move(held);
        }
      });
    }
  });
  on("pointerup", letGo(drop));
  on("pointercancel", letGo(thing => thing && cancel?.(thing)));
}
