import { Client } from "../api/client.ts";
import type { Letter } from "../model/outbox.ts";
import { arrivalsOf, classScoresOf, effortsOf, runnersOf } from "./gym.ts";
import { Sender, type Shelf } from "./outbox.ts";

const shelf: Shelf = {
  keys: () => Object.keys(localStorage),
  read: (key) => localStorage.getItem(key),
  write: (key, value) => {
    localStorage.setItem(key, value);
  },
  remove: (key) => {
    localStorage.removeItem(key);
  },
};

/** 96 bits as letters that may stand in an id; also where the page came over plain http. */
function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Looks at what a delivered letter changed before it leaves the outbox, so that nothing jumps back on the screen. */
async function arrived(letter: Letter): Promise<void> {
  const met = /^\/api\/classes\/([^/]+)\/([a-z-]+)/.exec(letter.path);
  const id = decodeURIComponent(met?.[1] ?? "");
  if (met?.[2] === "arrivals" || met?.[2] === "walk-ins") await arrivalsOf(id).lookAgainIfWanted();
  if (met?.[2] === "runners") await runnersOf(id).lookAgainIfWanted();
  if (met?.[2] === "effort") await effortsOf(id).lookAgainIfWanted();
  if (met?.[2] === "scores") await classScoresOf(id).lookAgainIfWanted();
}

/** What readers enter on this device, on its way to the program. */
export const sender = new Sender({
  client: new Client(),
  shelf,
  now: () => Date.now(),
  newKey,
  arrived,
  later: (then, milliseconds) => {
    const timer = setTimeout(then, milliseconds);
    return () => {
      clearTimeout(timer);
    };
  },
});

/** Tries at once when the network is back, or when the reader comes back to the page. */
export function followNetwork(): void {
  addEventListener("online", () => {
    sender.tryNow();
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") sender.tryNow();
  });
}
