import { signal } from "@preact/signals";
import { listenToChanges } from "../api/events.ts";
import type { Answer } from "../api/client.ts";
import type { Me } from "../model/account.ts";
import type { Fault } from "../model/fault.ts";
import { forgetAll, lookAgainAtAll, tellChange } from "./gym.ts";
import { program } from "./program.ts";
import { sender } from "./sender.ts";

/** Who is signed in; null until the program has said. */
export const me = signal<Me | null>(null);
export const meFault = signal<Fault | null>(null);

/** The link that the address carried: the terminal's, a person's own, that of one class, that of a screen. */
export interface Ticket {
  readonly kind: "owner" | "person" | "class" | "screen";
  readonly token: string;
}
export const ticket = signal<Ticket | null>(null);

let stopListening: (() => void) | null = null;

/** The program answers again after it was gone. */
function backAgain(): void {
  lookAgainAtAll();
  sender.tryNow();
}

function enter(who: Me): void {
  forgetAll();
  stopListening?.();
  stopListening = who.role === null ? null : listenToChanges(tellChange, backAgain);
  if (who.role === null) sender.close();
  else sender.open(who.name);
  me.value = who;
  meFault.value = null;
}

/** The ticket that an address carries behind its `#`. */
export function ticketIn(fragment: string): Ticket | null {
  const met = /^#(owner|person|class|screen)=([A-Za-z0-9_-]+)$/.exec(fragment);
  return met ? { kind: met[1] as Ticket["kind"], token: met[2] ?? "" } : null;
}

/** Takes the ticket out of the address: it must not stay in the history. */
function takeTicket(): void {
  ticket.value = ticketIn(location.hash) ?? ticket.value;
  if (ticket.value) history.replaceState(null, "", location.pathname);
}

/** Whether a link is all that there is to show. */
const opensAlone = (at: Ticket | null): at is Ticket => at?.kind === "class" || at?.kind === "screen";

/** Asks who is signed in, or signs in by a link that is enough. */
export async function begin(): Promise<void> {
  takeTicket();
  const at = ticket.value;
  if (opensAlone(at)) {
    const fault = await signInByLink(at.token, null);
    if (fault === null) return;
    ticket.value = null;
    meFault.value = fault.status === 401 ? { ...fault, text: "this link opens nothing any more" } : fault;
    return;
  }
  const answer = await program.me();
  if (answer.ok) enter(answer.value);
  else meFault.value = answer.fault;
}

/** Takes tickets of links that are opened while the page is open. */
export function followTickets(): void {
  addEventListener("hashchange", () => {
    takeTicket();
    if (opensAlone(ticket.value)) void begin();
  });
}

async function entered(answer: Promise<Answer<Me>>): Promise<Fault | null> {
  const given = await answer;
  if (!given.ok) return given.fault;
  ticket.value = null;
  enter(given.value);
  return null;
}

export const becomeOwner = (token: string, name: string, password: string) =>
  entered(program.becomeOwner(token, name, password));
export const signIn = (name: string, password: string) => entered(program.signIn(name, password));
export const signInByLink = (link: string, pin: string | null) => entered(program.signInByLink(link, pin));

export async function signOut(): Promise<void> {
  const answer = await program.signOut();
  if (answer.ok) await begin();
  else meFault.value = answer.fault;
}
