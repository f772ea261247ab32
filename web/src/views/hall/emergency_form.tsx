import { useState } from "preact/hooks";
import { usualCard } from "../../model/emergency.ts";
import type { Fault } from "../../model/fault.ts";
import { emergency } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { sentence } from "../../ui/words.ts";

function Form({ text, version }: { readonly text: string; readonly version: string }) {
  const [written, setWritten] = useState(text || usualCard);
  const [fault, setFault] = useState<Fault | null>(null);
  const [saved, setSaved] = useState(false);
  const keep = async () => {
    const answer = await program.keepEmergency(written, version);
    setFault(answer.ok ? null : answer.fault);
    setSaved(answer.ok);
    if (answer.ok) await emergency.lookAgain();
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <label class="field">
        <span class="label">One step a line: who calls, the address, where defibrillator and first-aid box hang</span>
        <textarea
          rows={7}
          maxLength={3500}
          value={written}
          onInput={(event) => {
            setSaved(false);
            setWritten(event.currentTarget.value);
          }}
        />
      </label>
      {fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      <div class="row">
        <button>Save the card</button>
        <span role="status" class="small soft">
          {saved ? "Saved." : text ? "" : "Not written yet: what stands here is the usual card."}
        </span>
      </div>
    </form>
  );
}

/** The emergency card of the floor's screens, in the gym's own words. */
export function EmergencyForm() {
  return (
    <section class="sheet" aria-labelledby="emergency-card">
      <h2 id="emergency-card">Emergency card</h2>
      <p class="soft">
        One tap away on every screen of the floor. Write it with your own emergency plan at hand: local rules come first.
      </p>
      <LookedAt at={emergency} show={(card) => <Form key={card.version} text={card.text} version={card.version} />} />
    </section>
  );
}
