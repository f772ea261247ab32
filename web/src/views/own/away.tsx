import { useEffect, useMemo, useState } from "preact/hooks";
import type { AwayPlace, AwayPlan } from "../../model/away.ts";
import type { Fault } from "../../model/fault.ts";
import { program } from "../../state/program.ts";
import { latest } from "../../editor/latest.ts";
import { clockText } from "../../charts/words.ts";
import { CopyButton } from "../../ui/copy_button.tsx";
import { Said } from "../../ui/said.tsx";
import { sentence } from "../../ui/words.ts";

/** What people have at home or find in a park, by the catalogue's ids. */
export const kitAtHand: readonly (readonly [string, string])[] = [
  ["dumbbell", "dumbbells"],
  ["kettlebell", "a kettlebell"],
  ["band", "a band"],
  ["jump-rope", "a rope"],
  ["pull-up-bar", "a bar to hang from"],
];

const minuteChoices = [15, 20, 30, 45] as const;

function Wishes({ place, change }: { readonly place: AwayPlace; readonly change: (place: AwayPlace) => void }) {
  const flags: readonly (readonly ["quiet" | "outside", string])[] = [
    ["quiet", "Quiet: people live below"],
    ["outside", "There is somewhere to run"],
  ];
  return (
    <>
      <fieldset class="away-wishes">
        <legend>What you have</legend>
        {kitAtHand.map(([id, words]) => (
          <label key={id} class="beside">
            <input
              type="checkbox"
              checked={place.kit.includes(id)}
              onChange={(event) => {
                const others = place.kit.filter((each) => each !== id);
                change({ ...place, kit: event.currentTarget.checked ? [...others, id] : others });
              }}
            />
            {words}
          </label>
        ))}
      </fieldset>
      <fieldset class="away-wishes">
        <legend>Where you are</legend>
        {flags.map(([name, words]) => (
          <label key={name} class="beside">
            <input
              type="checkbox"
              checked={place[name]}
              onChange={(event) => {
                change({ ...place, [name]: event.currentTarget.checked });
              }}
            />
            {words}
          </label>
        ))}
        <label class="beside">
          Minutes
          <select
            value={place.minutes ?? ""}
            onChange={(event) => {
              const { minutes, ...rest } = place;
              const chosen = Number(event.currentTarget.value);
              change(chosen > 0 ? { ...rest, minutes: chosen } : rest);
            }}
          >
            <option value="">as long as the class</option>
            {minuteChoices.map((minutes) => (
              <option key={minutes} value={minutes}>
                {minutes}
              </option>
            ))}
          </select>
        </label>
      </fieldset>
    </>
  );
}

function Plan({ plan }: { readonly plan: AwayPlan }) {
  return (
    <>
      <p>
        About {clockText(plan.away_s)} there, {clockText(plan.here_s)} in the gym.
      </p>
      <pre class="chalk">{plan.text}</pre>
      <CopyButton text={plan.text} words="Copy the text to send" />
      {plan.notes.map((note) => (
        <p key={note} class="small">
          {sentence(note)}
        </p>
      ))}
      {plan.patterns.length > 0 && (
        <details>
          <summary>How long each pattern works</summary>
          <table class="patterns">
            <thead>
              <tr>
                <th scope="col">pattern</th>
                <th scope="col" class="number">
                  in the gym
                </th>
                <th scope="col" class="number">
                  there
                </th>
              </tr>
            </thead>
            <tbody>
              {plan.patterns.map(({ pattern, here_s, away_s }) => (
                <tr key={pattern}>
                  <th scope="row">{pattern}</th>
                  <td class="number">{clockText(here_s)}</td>
                  <td class="number">{clockText(away_s)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </>
  );
}

const nothingAtHand: AwayPlace = { kit: [], quiet: false, outside: false };

/** The person's next class for wherever they are, as chalk to read or to send. */
export function Away({ id }: { readonly id: string }) {
  const [place, setPlace] = useState(nothingAtHand);
  const [open, setOpen] = useState(false);
  const [plan, setPlan] = useState<AwayPlan | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [looking, setLooking] = useState(false);
  const asker = useMemo(
    () =>
      latest({
        ask: (asked: AwayPlace, stop) => program.ownAway(id, asked, stop),
        answered: (answer) => {
          setLooking(false);
          setFault(answer.ok ? null : answer.fault);
          setPlan(answer.ok ? answer.value : null);
        },
        pause: 300,
      }),
    [id],
  );
  useEffect(() => {
    if (!open) return;
    setLooking(true);
    asker.ask(place);
    return () => {
      asker.stop();
    };
  }, [open, place, asker]);
  return (
    <details
      class="sheet away"
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>I cannot come: the same at home or on the way</summary>
      <div class="stack" aria-busy={looking}>
        <Wishes place={place} change={setPlace} />
        <p role="status" class="small soft">
          {looking ? "Working it out…" : ""}
        </p>
        {fault && (
          <Said weight="problem" alert>
            {sentence(fault.text)}
          </Said>
        )}
        {plan && <Plan plan={plan} />}
      </div>
    </details>
  );
}
