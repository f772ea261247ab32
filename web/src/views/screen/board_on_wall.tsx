import { boardOf, classes, readingOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { dayWords } from "../../ui/words.ts";

/** The board as large as its lines let it be: on a wall nobody scrolls. */
function sizeOf(lines: readonly string[]): string {
  const longest = Math.max(12, ...lines.map((line) => line.length));
  return `min(${String(66 / Math.max(4, lines.length))}vh, ${String(150 / longest)}vw, 9vh)`;
}

function Text({ id }: { readonly id: string }) {
  return (
    <LookedAt
      at={boardOf(id)}
      show={({ text }) => {
        const title = readingOf(id).now.value.value?.title ?? "";
        const all = text.trim().split("\n");
        const lines = title !== "" && all[0]?.trim() === title ? all.slice(1) : all;
        return (
          <>
            {title ? <h1>{title}</h1> : <h1 class="unseen">The board</h1>}
            <div class="screen-lines" style={{ fontSize: sizeOf(lines) }}>
              {lines.map((line, index) => (
                <p key={index}>{line}</p>
              ))}
            </div>
          </>
        );
      }}
    />
  );
}

/** The board of the next class, for the whole room. */
export function BoardOnWall() {
  return (
    <LookedAt
      at={classes}
      show={([next]) => {
        if (!next?.board) return <p>This class has no board yet.</p>;
        readingOf(next.board).want();
        return (
          <article class="screen-board">
            <p class="screen-when">{[next.date ? dayWords(next.date) : "", next.start ?? ""].filter(Boolean).join(", ")}</p>
            <Text id={next.board} />
            <p class="screen-caution">
              Tell the coach before the start what you cannot do today. Stop and get help for chest pain, dizziness or
              sudden severe pain.
            </p>
          </article>
        );
      }}
    />
  );
}
