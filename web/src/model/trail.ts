import { listOf, number, objectOf, orNull, text, type Decoded } from "./decode.ts";

const line = objectOf({ number, who: text, at: text, what: text });
/** One change of the gym: who, when and what, never what was in it. */
export type TrailLine = Decoded<typeof line>;

/** A page of the trail, the newest first; `next` is where the next page goes on. */
export const trailPage = objectOf({ lines: listOf(line), next: orNull(number) });
