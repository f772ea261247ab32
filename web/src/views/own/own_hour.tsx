import { useEffect, useState } from "preact/hooks";
import { effortOf } from "../../model/effort.ts";
import { effortsOf } from "../../state/gym.ts";
import { sendEffort, sendNote } from "../../state/said.ts";
import { sender } from "../../state/sender.ts";
import { Efforts } from "../../ui/efforts.tsx";
import { Field } from "../../ui/field.tsx";

/** After the hour: how hard it was, and a word to the coaches. Both wait on the phone while the program is gone. */
export function OwnHour({ classId, person }: { readonly classId: string; readonly person: string }) {
  const known = effortsOf(classId);
  const [note, setNote] = useState("");
  const [told, setTold] = useState(false);
  useEffect(() => {
    known.want();
  }, [known]);
  // A gym folder keeps neither.
  if (known.now.value.fault?.status === 501) return null;
  const said = effortOf(known.now.value.value ?? [], sender.outbox.value, classId, person);
  return (
    <section class="sheet stack" aria-labelledby="own-hour">
      <h2 id="own-hour">After the hour</h2>
      <Efforts
        name="hour"
        label="How hard was it? 0 nothing, 10 all you had"
        value={said}
        change={(effort) => {
          sendEffort(classId, person, effort);
        }}
      />
      <form
        class="one-line"
        onSubmit={(event) => {
          event.preventDefault();
          sendNote(person, note, "my note");
          setTold(note.trim() !== "");
          setNote("");
        }}
      >
        <Field label="A word to the coaches" value={note} change={setNote} />
        <button disabled={note.trim() === ""}>Tell</button>
      </form>
      <p role="status" class="soft">
        {told ? "Told, or on its way." : ""}
      </p>
    </section>
  );
}
