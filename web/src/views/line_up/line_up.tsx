import { gatherings, teamWords, type PieceLineUp } from "../../model/line_up.ts";
import { lineUpOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import "./line_up.css";

function Piece({ piece }: { readonly piece: PieceLineUp }) {
  return (
    <section aria-label={piece.title}>
      <h3>{piece.title}</h3>
      <div class="line-up">
        {gatherings(piece).map((gathering) => (
          <div key={gathering.name}>
            {gathering.name ? <h4>{gathering.name}</h4> : null}
            <ol class="plain tight">
              {gathering.teams.map((team) => (
                <li key={team[0]?.id}>{teamWords(piece, team, (person) => person.name)}</li>
              ))}
            </ol>
          </div>
        ))}
      </div>
    </section>
  );
}

/** Who is in which heat, group, pair or lane, of every piece that has any; nothing where none has. */
export function LineUp({ classId, open }: { readonly classId: string; readonly open: boolean }) {
  return (
    <LookedAt
      at={lineUpOf(classId)}
      show={({ pieces }) =>
        pieces.length === 0 ? null : (
          <details class="sheet line-ups" open={open}>
            <summary>Who stands where</summary>
            {pieces.map((piece) => (
              <Piece key={piece.piece} piece={piece} />
            ))}
          </details>
        )
      }
    />
  );
}
