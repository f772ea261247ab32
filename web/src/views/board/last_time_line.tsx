import type { LastTime } from "../../model/gym.ts";

function pieceWords(piece: LastTime["pieces"][number]): string {
  const name = piece.piece ? `${piece.piece}: ` : "";
  const range = piece.people === 1 ? piece.best : `${piece.best} best, ${piece.middle} in the middle, ${piece.last} last`;
  const capped = piece.capped > 0 ? `; the cap stopped ${piece.capped} of ${piece.people}` : "";
  const effort = piece.effort === null ? "" : `; effort ${piece.effort.toFixed(1)} of 10`;
  return `${name}${range} (${piece.people} scored)${capped}${effort}`;
}

/** Last time we did this: how it went, and what was too long. */
export function LastTimeLine({ last }: { readonly last: LastTime }) {
  const day = new Date(`${last.date}T12:00:00`).toLocaleDateString(undefined, { day: "numeric", month: "long", year: "numeric" });
  return (
    <p class="last-time">
      <strong>Last time, {day}.</strong> {last.pieces.map(pieceWords).join(". ")}.
    </p>
  );
}
