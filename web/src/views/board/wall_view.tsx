import { useEffect, useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { ClassRow } from "../../model/gym.ts";
import type { Reading } from "../../model/reading.ts";
import { classes } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { Said } from "../../ui/said.tsx";
import "./board.css";

interface Wall {
  readonly text: string;
  readonly reading: Reading | null;
}

async function wallOf(id: string): Promise<{ readonly wall: Wall } | { readonly fault: Fault }> {
  const board = await program.board(id);
  if (!board.ok) return { fault: board.fault };
  const read = await program.read(board.value.text);
  return { wall: { text: board.value.text, reading: read.ok ? read.value : null } };
}

function whenWords(row: ClassRow): string {
  const day = row.date
    ? new Date(`${row.date}T12:00:00`).toLocaleDateString(undefined, { weekday: "long", day: "numeric", month: "long" })
    : "";
  return [day, row.start ?? "", row.minutes === null ? "" : `${row.minutes} min`].filter(Boolean).join(" · ");
}

/** A saved board for the members, the evening before: as chalked, read back in sentences, to print or to show. */
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
  const when = (classes.now.value.value ?? []).filter((row) => row.board === id).map(whenWords);
  const title = wall.reading?.title ?? "";
  const lines = title && wall.text.split("\n")[0]?.trim() === title ? wall.text.split("\n").slice(1).join("\n") : wall.text;
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
        <a class="button" href={`/board/${id}`}>
          Back to the board
        </a>
      </div>
      <h1>{title || "Next session"}</h1>
      {when.map((words) => (
        <p key={words} class="wall-when">
          {words}
        </p>
      ))}
      <pre class="wall-text">{lines.trim()}</pre>
      {wall.reading && (
        <section>
          <h2>In words</h2>
          <ol>
            {wall.reading.reading.map((sentence, index) => (
              <li key={index}>{sentence}</li>
            ))}
          </ol>
        </section>
      )}
      <p class="caution">
        Tell the coach before the start what you cannot do today. Stop and seek medical care on chest pain, dizziness,
        sudden severe pain, or dark urine after hard unfamiliar work.
      </p>
    </article>
  );
}
