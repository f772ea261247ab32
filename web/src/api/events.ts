import { objectOf, wordOf, type Decoded } from "../model/decode.ts";

const event = objectOf({ changed: wordOf("boards", "classes", "people", "hall", "house", "scores", "door", "clock") });
/** A part of the gym that somebody changed. */
export type Topic = Decoded<typeof event>["changed"];

/**
 * Listens to what changes in the gym; the browser connects again by itself, and then `back` is told, since what changed
 * meanwhile was not heard. Returns how to stop.
 */
export function listenToChanges(heard: (topic: Topic) => void, back: () => void): () => void {
  const source = new EventSource("/api/events");
  let wasGone = false;
  source.onerror = () => {
    wasGone = true;
  };
  source.onopen = () => {
    if (wasGone) back();
    wasGone = false;
  };
  source.onmessage = (message: MessageEvent<string>) => {
    try {
      heard(event(JSON.parse(message.data), "").changed);
    } catch {
      // An event of a newer program: nothing on this page stands for it.
    }
  };
  return () => {
    source.close();
  };
}
