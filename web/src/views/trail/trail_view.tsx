import { useEffect, useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { TrailLine } from "../../model/trail.ts";
import { program } from "../../state/program.ts";
import { Said } from "../../ui/said.tsx";
import { localMoment, sentence } from "../../ui/words.ts";

/** Who changed what and when, a page after the other. */
export function TrailView() {
  const [lines, setLines] = useState<readonly TrailLine[] | null>(null);
  const [next, setNext] = useState<number | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const more = async (before: number | null) => {
    const answer = await program.trail(before);
    setFault(answer.ok ? null : answer.fault);
    if (!answer.ok) return;
    setLines((known) => [...(before === null ? [] : (known ?? [])), ...answer.value.lines]);
    setNext(answer.value.next);
  };
  useEffect(() => {
    void more(null);
  }, []);
  return (
    <div class="stack">
      <h1>The trail</h1>
      <p class="soft">Who changed what and when, the newest first; never what was in it.</p>
      {fault?.status === 501 ? (
        <Said weight="note">A gym folder keeps no trail: a gym in one file does.</Said>
      ) : fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      {lines === null ? (
        fault ? null : <p class="soft">Looking…</p>
      ) : (
        <section class="sheet" aria-label="Changes">
          <table>
            <thead>
              <tr>
                <th scope="col">When</th>
                <th scope="col">Who</th>
                <th scope="col">What</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <tr key={line.number}>
                  <td>{localMoment(line.at)}</td>
                  <td>{line.who}</td>
                  <td>{line.what}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {next === null ? null : (
            <button type="button" onClick={() => void more(next)}>
              Further back
            </button>
          )}
        </section>
      )}
    </div>
  );
}
