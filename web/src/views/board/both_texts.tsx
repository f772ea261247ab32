import type { Conflict } from "./board_model.ts";

interface BothTextsProps {
  readonly mine: string;
  readonly conflict: Conflict;
  readonly settle: (choice: "mine" | "theirs") => void;
}

/** Lines of one text that the other has not, by their words. */
const linesOnlyIn = (text: string, other: string): ReadonlySet<string> => {
  const known = new Set(other.split("\n").map((line) => line.trim()));
  return new Set(text.split("\n").map((line) => line.trim()).filter((line) => line && !known.has(line)));
};

function OneText({ text, other, title }: { readonly text: string; readonly other: string; readonly title: string }) {
  const own = linesOnlyIn(text, other);
  return (
    <section>
      <h3>{title}</h3>
      <pre>
        {text.split("\n").map((line, index) => (
          <div key={index} class={own.has(line.trim()) ? "own-line" : ""}>
            {own.has(line.trim()) ? `› ${line}` : `  ${line}`}
          </div>
        ))}
      </pre>
    </section>
  );
}

/** Somebody else saved this board meanwhile: both texts, and which of them is to stay. */
export function BothTexts({ mine, conflict, settle }: BothTextsProps) {
  return (
    <div class="both-texts" role="alertdialog" aria-label="This board was saved by somebody else meanwhile">
      <p>
        <strong>Somebody else saved this board meanwhile.</strong> Both texts are here; lines that only one has are
        marked. Nothing is saved until you say so.
      </p>
      <div class="both-texts-sides">
        <OneText title="Yours" text={mine} other={conflict.theirs} />
        <OneText title="Theirs" text={conflict.theirs} other={mine} />
      </div>
      <div class="both-texts-acts">
        <button
          type="button"
          class="act"
          onClick={() => {
            settle("mine");
          }}
        >
          Go on with yours
        </button>
        <button
          type="button"
          class="act"
          onClick={() => {
            settle("theirs");
          }}
        >
          Take theirs
        </button>
      </div>
    </div>
  );
}
