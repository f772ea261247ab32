import type { LastTime } from "../../model/gym.ts";
import { dayWords } from "../../ui/words.ts";

/** How one piece went, in words. */
export function pieceWords(piece: LastTime["pieces"][number]): string {
  const name = piece.piece ? `${piece.piece}: ` : "";
  const range = piece.people === 1 ? piece.best : `${piece.best} best, ${piece.middle} in the middle, ${piece.last} last`;
  const capped = piece.capped > 0 ? `; the cap stopped ${piece.capped} of ${piece.people}` : "";
  const effort = piece.effort === null ? "" : `; effort ${piece.effort.toFixed(1)} of 10`;
  return `${name}${range} (${piece.people} scored)${capped}${effort}`;
}

/** Last time we did this: how it went, and what was too long. */
export function LastTimeLine({ last }: { readonly last: LastTime }) {
  return (
    <p class="last-time">
      <strong>Last time, {dayWords(last.date)}.</strong> {last.pieces.map(pieceWords).join(". ")}.
    </p>
  );
}
