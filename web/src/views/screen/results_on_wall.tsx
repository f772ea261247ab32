import { resultsOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { PieceResultsView } from "../results/results_view.tsx";

/** What came of the class, for the whole room. */
export function ResultsOnWall({ id }: { readonly id: string }) {
  return (
    <LookedAt
      at={resultsOf(id)}
      show={({ pieces }) => {
        const scored = pieces.filter((piece) => piece.people.length > 0);
        return (
          <article class="screen-results results floor">
            <h1>Results</h1>
            {scored.length === 0 ? <p class="soft">No scores yet.</p> : null}
            {scored.map((piece) => (
              <PieceResultsView key={piece.piece} piece={piece} />
            ))}
          </article>
        );
      }}
    />
  );
}
