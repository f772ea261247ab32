import { lastOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { dayWords } from "../../ui/words.ts";
import { pieceWords } from "./last_time_line.tsx";

/** The last day on which this board was done, and how it went; nothing for a board that never was. */
export function LastTime({ boardId }: { readonly boardId: string }) {
  return (
    <LookedAt
      at={lastOf(boardId)}
      show={({ last }) =>
        last === null ? null : (
          <section class="sheet" aria-labelledby="last-time">
            <h2 id="last-time">Last time we did this</h2>
            <p class="soft">{dayWords(last.date)}</p>
            <ul class="plain tight">
              {last.pieces.map((piece) => (
                <li key={piece.piece}>{pieceWords(piece)}.</li>
              ))}
            </ul>
          </section>
        )
      }
    />
  );
}
