import { useEffect, useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { ClassRow } from "../../model/gym.ts";
import type { Reading } from "../../model/reading.ts";
import { classes } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { CopyButton } from "../../ui/copy_button.tsx";
import { Said } from "../../ui/said.tsx";
import { dayWords } from "../../ui/words.ts";
import "./board.css";

interface Wall {
  readonly text: string;
  readonly reading: Reading | null;
}

/** What the members are told. */
interface ForMembers {
  readonly title: string;
  readonly when: readonly string[];
  readonly text: string;
  readonly sentences: readonly string[];
}

async function wallOf(id: string): Promise<{ readonly wall: Wall } | { readonly fault: Fault }> {
  const board = await program.board(id);
  if (!board.ok) return { fault: board.fault };
  const read = await program.read(board.value.text);
  return { wall: { text: board.value.text, reading: read.ok ? read.value : null } };
}

function whenWords(row: ClassRow): string {
  const day = row.date ? dayWords(row.date) : "";
  return [day, row.start ?? "", row.minutes === null ? "" : `${row.minutes} min`].filter(Boolean).join(" · ");
}

const caution =
  "Tell the coach before the start what you cannot do today. Stop and seek medical care on chest pain, dizziness, " +
  "sudden severe pain, or dark urine after hard unfamiliar work.";

/** The same to be sent: what stands on the page, as plain text. */
function toSend(wall: ForMembers): string {
  const words = wall.sentences.length > 0 ? `In words:\n${wall.sentences.map((each) => `- ${each}`).join("\n")}` : "";
  return [wall.title, wall.when.join("\n"), wall.text, words, caution].filter(Boolean).join("\n\n") + "\n";
}

function forMembers({ text, reading }: Wall, rows: readonly ClassRow[]): ForMembers {
  const title = reading?.title ?? "";
  const lines = text.split("\n");
  return {
    title: title || "Next session",
    when: rows.map(whenWords),
    text: (title && lines[0]?.trim() === title ? lines.slice(1) : lines).join("\n").trim(),
    sentences: reading?.reading ?? [],
  };
}

/** A saved board for the members, the evening before: as chalked, read back in sentences, to print, to show or to send. */
export function WallView({ id }: { readonly id: string }) {
  const [wall, setWall] = useState<Wall | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  useEffect(() => {
    classes.want();
    let gone = false;
    void wallOf(id).then((found) => {
      if (gone) return;
      if ("fault" in found) setFault(found.fault);
      else setWall(found.wall);
    });
    return () => {
      gone = true;
    };
  }, [id]);
  if (fault)
    return (
      <Said weight="problem" alert>
        {fault.text}. <a href="/board">To the boards</a>
      </Said>
    );
  if (!wall) return <p class="soft">Looking…</p>;
  const told = forMembers(wall, (classes.now.value.value ?? []).filter((row) => row.board === id));
  return (
    <article class="wall">
      <div class="row no-print">
        <button
          type="button"
          class="first"
          onClick={() => {
            print();
          }}
        >
          Print
        </button>
        <CopyButton text={toSend(told)} words="Copy as text" />
        <a class="button" href={`/board/${id}`}>
          To the board
        </a>
      </div>
      <h1>{told.title}</h1>
      {told.when.map((words) => (
        <p key={words} class="wall-when">
          {words}
        </p>
      ))}
      <pre class="wall-text">{told.text}</pre>
      {told.sentences.length > 0 && (
        <section>
          <h2>In words</h2>
          <ol>
            {told.sentences.map((sentence, index) => (
              <li key={index}>{sentence}</li>
            ))}
          </ol>
        </section>
      )}
      <p class="caution">{caution}</p>
    </article>
  );
}
