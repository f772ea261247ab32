import { useState } from "preact/hooks";
import { notesOn } from "../../model/notes.ts";
import { notes } from "../../state/gym.ts";
import { sendNote } from "../../state/said.ts";
import { Field } from "../../ui/field.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { NoteList } from "./note_list.tsx";

/** What was told to the coaches of one person, by themselves or with a score, and a line to add to it. */
export function PersonNotes({ id, name }: { readonly id: string; readonly name: string }) {
  const [text, setText] = useState("");
  const [until, setUntil] = useState("");
  if (notes.now.value.fault?.status === 501) return null;
  return (
    <section class="sheet stack" aria-labelledby="person-notes">
      <h2 id="person-notes">Told to the coaches</h2>
      <LookedAt
        at={notes}
        show={(all) => {
          const list = notesOn(all, id);
          return list.length === 0 ? <p class="soft">Nothing yet.</p> : <NoteList list={list} nameOf={null} mayTakeAway />;
        }}
      />
      <form
        class="row note-form"
        onSubmit={(event) => {
          event.preventDefault();
          sendNote(id, text, `a word of ${name}`, until);
          setText("");
          setUntil("");
        }}
      >
        <Field label="A word for the other coaches" value={text} change={setText} hint="What to do, never why" />
        <Field label="Until (may stay empty)" type="date" value={until} change={setUntil} />
        <button disabled={text.trim() === ""}>Tell</button>
      </form>
    </section>
  );
}
