import { useEffect } from "preact/hooks";
import type { Brief } from "../../model/brief.ts";
import { notesForClass } from "../../model/notes.ts";
import { notes, people } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { count } from "../../ui/words.ts";
import { NoteList } from "./note_list.tsx";

/** What those who come told the coaches, and behind a fold what others did. */
export function ClassNotes({ brief, mayEdit }: { readonly brief: Brief; readonly mayEdit: boolean }) {
  useEffect(() => {
    if (mayEdit) people.want();
  }, [mayEdit]);
  // A gym folder keeps none.
  if (notes.now.value.fault?.status === 501) return null;
  const names = new Map(brief.people.map((each) => [each.id, each.name]));
  const rows = people.now.value.value?.rows ?? [];
  const nameOf = (id: string) => names.get(id) ?? rows.find((row) => row["id"] === id)?.["name"] ?? id;
  return (
    <LookedAt
      at={notes}
      show={(all) => {
        const { here, elsewhere } = notesForClass(all, [...names.keys()]);
        if (here.length + elsewhere.length === 0) return null;
        return (
          <section class="sheet stack" aria-labelledby="class-notes">
            <h2 id="class-notes">Told to the coaches</h2>
            {here.length === 0 ? <p class="soft">Nothing of those who come.</p> : null}
            <NoteList list={here} nameOf={nameOf} mayTakeAway={mayEdit} />
            {elsewhere.length > 0 ? (
              <details class="no-print">
                <summary>{count(elsewhere.length, "word of somebody", "words of people")} not in this class</summary>
                <NoteList list={elsewhere} nameOf={nameOf} mayTakeAway={mayEdit} />
              </details>
            ) : null}
          </section>
        );
      }}
    />
  );
}
