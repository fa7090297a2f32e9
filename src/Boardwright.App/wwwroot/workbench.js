// Starts the pages, and finds the program again after it was stopped. What only the browser can do lies in the scripts beside this one.
import { followPointer } from "./drag.js";
import { followKeys } from "./keys.js";
import { followLines } from "./places.js";

export * from "./drafts.js";
export { isNew, open, pointAt, see } from "./places.js";

let ending = null;

// Takes the page over, until it is given back.
export function begin(program) {
  ending?.abort();
  ending = new AbortController();
  const until = { signal: ending.signal };
  followKeys(program, until);
  followPointer(program, until);
  followLines(until);
}

export const end = () => ending?.abort();

// Once for each page: the program imports this very script again to call what it exports.
// A page that came back after the program did begins anew: the draft in this browser holds what was typed.
document.getElementById("components-reconnect-modal").addEventListener("components-reconnect-state-changed", event => {
  if (event.detail.state === "rejected") {
    location.reload();
  }
});
Blazor.start({ circuit: {
  // Every browser that can show these pages has web sockets: asking for other ways first costs a round trip.
  configureSignalR: builder => builder.withUrl("_blazor", { skipNegotiation: true, transport: 1 }),
  reconnectionOptions: { maxRetries: 100000, retryIntervalMilliseconds: n => Math.min(5000, 300 * (n + 1)) },
} });
