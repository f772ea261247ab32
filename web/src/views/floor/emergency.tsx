import { useRef } from "preact/hooks";
import { stepsOf, usualCard } from "../../model/emergency.ts";
import { emergency } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";

function Steps({ card }: { readonly card: string }) {
  return (
    <ol class="emergency-steps">
      {stepsOf(card).map((step, index) => (
        <li key={index}>{step}</li>
      ))}
    </ol>
  );
}

/** One tap to what to do when somebody is hurt; the usual card stands there until the owner has set one. */
export function EmergencyButton() {
  const card = useRef<HTMLDialogElement>(null);
  return (
    <>
      <button
        type="button"
        class="emergency"
        onClick={() => {
          card.current?.showModal();
        }}
      >
        Emergency
      </button>
      <dialog ref={card} class="card" aria-labelledby="emergency-title">
        <h2 id="emergency-title">Emergency</h2>
        {emergency.now.value.value === null ? <Steps card={usualCard} /> : null}
        <LookedAt
          at={emergency}
          show={({ text }) => (
            <>
              <Steps card={text || usualCard} />
              {text ? null : <p class="small soft">This gym has not written a card of its own yet: it stands under Hall.</p>}
            </>
          )}
        />
        <p class="small">Local rules and the advice of emergency services come first.</p>
        <button
          type="button"
          class="first"
          autofocus
          onClick={() => {
            card.current?.close();
          }}
        >
          Close
        </button>
      </dialog>
    </>
  );
}
