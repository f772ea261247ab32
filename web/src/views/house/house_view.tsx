import { useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { House, KeptHouse, Movement } from "../../model/gym.ts";
import { houseQuestions, shorthandsOf, wordsOf, type HouseQuestion, type Shorthand } from "../../model/house_change.ts";
import { house, movements } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { SaveBar } from "../../ui/save_bar.tsx";
import { sentence } from "../../ui/words.ts";
import { ShorthandTable } from "./shorthand_table.tsx";
import "./house.css";

function Question(props: { readonly asked: HouseQuestion; readonly shown: House; readonly set: (part: Partial<House>) => void }) {
  const { asked, shown, set } = props;
  return (
    <fieldset class="house-question">
      <legend>{asked.chalked}</legend>
      {asked.answers.map(([value, words]) => (
        <label key={words} class="beside">
          <input
            type="radio"
            name={asked.key}
            checked={shown[asked.key] === value}
            onChange={() => {
              set({ [asked.key]: value });
            }}
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}

function HousePage({ kept, known }: { readonly kept: KeptHouse; readonly known: readonly Movement[] }) {
  const [draft, setDraft] = useState<House | null>(null);
  const [lines, setLines] = useState<readonly Shorthand[] | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const shown = draft ?? kept.house;
  const leave = () => {
    setDraft(null);
    setLines(null);
    setWrong(null);
    setFault(null);
  };
  const save = async () => {
    const read = wordsOf(lines ?? shorthandsOf(kept.house));
    setWrong("wrong" in read ? read.wrong : null);
    if ("wrong" in read) return;
    const answer = await program.keepHouse({ ...shown, words: read.words }, kept.version);
    setFault(answer.ok ? null : answer.fault);
    if (!answer.ok) return;
    await house.lookAgain();
    leave();
  };
  const told = wrong ?? (fault ? sentence(fault.text) : null);
  return (
    <>
      <div class="columns">
        <section class="sheet" aria-labelledby="chalk">
          <h2 id="chalk">How our chalk is meant</h2>
          <p class="soft small">A board that says it itself goes by what it says.</p>
          {houseQuestions.map((asked) => (
            <Question
              key={asked.key}
              asked={asked}
              shown={shown}
              set={(part) => {
                setDraft({ ...shown, ...part });
              }}
            />
          ))}
        </section>
        <ShorthandTable lines={lines ?? shorthandsOf(kept.house)} known={known} change={setLines} />
      </div>
      {draft ?? lines ? (
        <SaveBar label="Changes of the house" save={() => void save()} leave={leave}>
          {told ? (
            <Said weight="problem" alert>
              Not saved. {told}
            </Said>
          ) : (
            <span>Changed, not saved yet. Every board is read by it at once.</span>
          )}
        </SaveBar>
      ) : null}
    </>
  );
}

/** What the gym has settled once: how marks that could mean two things are read, and its own words. */
export function HouseView() {
  return (
    <div class="stack">
      <h1>House</h1>
      <LookedAt
        at={movements}
        show={(known) => <LookedAt at={house} show={(kept) => <HousePage kept={kept} known={known} />} />}
      />
    </div>
  );
}
