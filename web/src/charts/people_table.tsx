import type { Rehearsal } from "../model/rehearsal.ts";
import { clockText, limiterText, rangeText, scoreText } from "./words.ts";

/** The same as the lanes, in a table. */
export function PeopleTable({ rehearsal }: { readonly rehearsal: Rehearsal }) {
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label="The rehearsal in a table">
      <table class="people-table">
        <caption>Scores over {rehearsal.runs} runs: four of five fall in the range.</caption>
        <thead>
          <tr>
            <th scope="col">Person</th>
            <th scope="col">Piece</th>
            <th scope="col">Range</th>
            <th scope="col">Middle</th>
            <th scope="col">Limited by</th>
            <th scope="col">Waits</th>
            <th scope="col">Stopped by the cap</th>
          </tr>
        </thead>
        <tbody>
          {rehearsal.people.flatMap((person) =>
            person.pieces.map((piece, index) => (
              <tr key={`${person.id} ${piece.piece}`}>
                {index === 0 && (
                  <th scope="rowgroup" rowSpan={person.pieces.length}>
                    {person.name}
                  </th>
                )}
                <td>{rehearsal.pieces[piece.piece]}</td>
                <td>{rangeText(piece)}</td>
                <td>{scoreText(piece, piece.p50)}</td>
                <td>{limiterText(piece.limiter)}</td>
                <td>{clockText(piece.wait_s)}</td>
                <td>{piece.capped > 0 ? `${Math.round(piece.capped * 100)} %` : "–"}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </div>
  );
}
