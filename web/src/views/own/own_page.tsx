import { useState } from "preact/hooks";
import { consentOf, ownTodayOf, personOf } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { Caution } from "../../ui/caution.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Waiting } from "../floor/waiting.tsx";
import { PersonBody } from "../people/person_view.tsx";
import { Away } from "./away.tsx";
import { OwnTodayView } from "./own_today.tsx";
import "../floor/floor.css";
import "./own.css";

/** The box of the wish: shows at once what was asked for, until the program has answered. */
function Wish({ id, kept }: { readonly id: string; readonly kept: boolean }) {
  const [asked, setAsked] = useState<boolean | null>(null);
  const ask = async (wanted: boolean): Promise<void> => {
    setAsked(wanted);
    await program.keepConsent(id, wanted);
    await consentOf(id).lookAgain();
    setAsked(null);
  };
  return (
    <label class="beside">
      <input
        type="checkbox"
        checked={asked ?? kept}
        onChange={(event) => {
          void ask(event.currentTarget.checked);
        }}
      />
      Show me in lists by score on the gym's screen
    </label>
  );
}

/** Whether the reader wants to be in lists by score: no, unless they say so here. */
function Consent({ id }: { readonly id: string }) {
  return <LookedAt at={consentOf(id)} show={({ in_rankings }) => <Wish id={id} kept={in_rankings} />} />;
}

/** A member's own page: today's class, what they do instead, their marks, their scores. */
export function OwnPage({ id }: { readonly id: string }) {
  return (
    <LookedAt
      at={personOf(id)}
      show={(row) => (
        <div class="own stack">
          <h1>{row["name"]}</h1>
          <Waiting />
          <LookedAt
            at={ownTodayOf(id)}
            show={({ today }) =>
              today ? (
                <>
                  <OwnTodayView today={today} id={id} />
                  {today.text ? <Away id={id} /> : null}
                </>
              ) : (
                <p class="soft">You are on the list of no class ahead.</p>
              )
            }
          />
          <PersonBody row={row} id={id} own />
          <Consent id={id} />
          <Caution />
        </div>
      )}
    />
  );
}
