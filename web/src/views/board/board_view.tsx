import { boards } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";

/** The boards of the gym. */
export function BoardView(_: { readonly id: string | null }) {
  return (
    <div class="stack">
      <h1>Boards</h1>
      <LookedAt
        at={boards}
        show={(rows) => (
          <ul class="plain">
            {rows.map((row) => (
              <li key={row.id}>{row.title || row.id}</li>
            ))}
          </ul>
        )}
      />
    </div>
  );
}
