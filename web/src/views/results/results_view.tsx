import { byVersion, type PieceResults, type Ranking, type ResultLine } from "../../model/results.ts";
import { forecastText, type Form } from "../../model/scores.ts";
import { resultsOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { FloorHead } from "../floor/floor_head.tsx";

const formOf = (piece: PieceResults): Form => {
  const forms = { seconds: "time", reps: "reps", kg: "load", m: "distance", kcal: "kcal" } as const;
  return piece.measure === "reps" && piece.reps_per_round >= 1 ? "rounds" : forms[piece.measure];
};

const versionWords = (saidAs: string): string => saidAs || "as written";

function beforeText(piece: PieceResults, line: ResultLine): string {
  if (line.before === null) return "";
  const forecast = { measure: piece.measure, p10: 0, p50: 0, p90: 0, reps_per_round: piece.reps_per_round };
  return forecastText(formOf(piece), forecast, line.before);
}

function Bests({ piece }: { readonly piece: PieceResults }) {
  const bests = piece.people.filter((each) => each.own === "beyond");
  if (bests.length === 0) return null;
  return (
    <section aria-label="Own bests">
      <h3>Own bests, beyond a day's luck</h3>
      <div class="bests">
        {bests.map((line) => (
          <div key={line.id} class="best">
            <strong>{line.name}</strong>
            {line.score}, before {beforeText(piece, line)}
          </div>
        ))}
      </div>
    </section>
  );
}

const remarks: Partial<Readonly<Record<ResultLine["own"], string>>> = { first: "first time", "within-luck": "as usual" };

function Version({ lines }: { readonly lines: readonly ResultLine[] }) {
  const words = versionWords(lines[0]?.said_as ?? "");
  return (
    <section aria-label={words}>
      <h3>{words}</h3>
      <ul class="lines">
        {lines.map((line) => (
          <li key={line.id}>
            <span>
              {line.name} <span class="small soft">{remarks[line.own] ?? ""}</span>
            </span>
            <strong>{line.score}</strong>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Places({ ranking }: { readonly ranking: Ranking }) {
  return (
    <section aria-label={`By score: ${versionWords(ranking.said_as)}`}>
      <h3>By score: {versionWords(ranking.said_as)}</h3>
      <ol>
        {ranking.rows.map((row) => (
          <li key={row.name}>
            <span>
              {row.place}. {row.name}
            </span>
            <strong>{row.score}</strong>
          </li>
        ))}
      </ol>
    </section>
  );
}

export function PieceResultsView({ piece }: { readonly piece: PieceResults }) {
  return (
    <section class="stack" aria-label={piece.piece}>
      <h2>{piece.piece}</h2>
      <Bests piece={piece} />
      {byVersion(piece.people).map(([doneAs, lines]) => (
        <Version key={doneAs} lines={lines} />
      ))}
      {piece.rankings.length > 0 ? (
        <p class="small soft">By score: only those who chose on their own page to be in such lists.</p>
      ) : null}
      {piece.rankings.map((ranking) => (
        <Places key={ranking.done_as} ranking={ranking} />
      ))}
    </section>
  );
}

/** What came of a class, for the screen: own bests first, then by version; a ranking of those who want one. */
export function ResultsView({ id }: { readonly id: string }) {
  return (
    <div class="floor results">
      <FloorHead classId={id} title="Results" />
      <LookedAt
        at={resultsOf(id)}
        show={({ pieces }) => {
          const scored = pieces.filter((piece) => piece.people.length > 0);
          return (
            <>
              {scored.length === 0 ? (
                <p>
                  No scores yet. <a href={`/scores/${id}`}>Enter them</a>
                </p>
              ) : null}
              {scored.map((piece) => (
                <PieceResultsView key={piece.piece} piece={piece} />
              ))}
            </>
          );
        }}
      />
    </div>
  );
}
