import type { Movement } from "../../model/gym.ts";
import type { Shorthand } from "../../model/house_change.ts";

interface TableProps {
  readonly lines: readonly Shorthand[];
  readonly known: readonly Movement[];
  readonly change: (lines: readonly Shorthand[]) => void;
}

/** Words that only this gym chalks, each with the movement that it means. */
export function ShorthandTable({ lines, known, change }: TableProps) {
  const names = new Map(known.map((each) => [each.id, each.name]));
  const set = (index: number, line: Shorthand | null) => {
    change(lines.flatMap((each, at) => (at === index ? (line ? [line] : []) : [each])));
  };
  return (
    <section class="sheet stack" aria-labelledby="own-words">
      <h2 id="own-words">Words of our own</h2>
      <p class="soft small">What you call it on the board, and the movement that it is.</p>
      <ul class="plain shorthands">
        {lines.map((line, index) => (
          <li key={index}>
            <label class="field">
              <span class="label">Chalked as</span>
              <input
                value={line.word}
                onInput={(event) => {
                  set(index, { ...line, word: event.currentTarget.value });
                }}
              />
            </label>
            <label class="field">
              <span class="label">Means</span>
              <input
                list="known-movements"
                value={names.get(line.movement) ?? line.movement}
                onInput={(event) => {
                  set(index, { ...line, movement: event.currentTarget.value });
                }}
              />
            </label>
            <button
              type="button"
              onClick={() => {
                set(index, null);
              }}
            >
              Take out<span class="unseen"> {line.word}</span>
            </button>
          </li>
        ))}
      </ul>
      <datalist id="known-movements">
        {known.map((each) => (
          <option key={each.id} value={each.name} />
        ))}
      </datalist>
      <div>
        <button
          type="button"
          onClick={() => {
            change([...lines, { word: "", movement: "" }]);
          }}
        >
          Add a word
        </button>
      </div>
    </section>
  );
}
