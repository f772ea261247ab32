import type { FitPlan, PersonFit, PieceFit } from "../../model/fits.ts";
import { CopyButton } from "../../ui/copy_button.tsx";
import { Said } from "../../ui/said.tsx";
import { sentence } from "../../ui/words.ts";
import { fitText, percent } from "./advice_words.ts";

function Steps({ person }: { readonly person: PersonFit }) {
  if (person.easier === "" && person.harder === "") return <span class="soft">none</span>;
  return (
    <dl class="fit-steps">
      {person.easier !== "" && (
        <div>
          <dt>easier</dt>
          <dd>{person.easier}</dd>
        </div>
      )}
      {person.harder !== "" && (
        <div>
          <dt>harder</dt>
          <dd>{person.harder}</dd>
        </div>
      )}
    </dl>
  );
}

function Row({ person }: { readonly person: PersonFit }) {
  return (
    <tr role="row">
      <th role="rowheader" scope="row">
        {person.name}
      </th>
      <td role="cell">
        {person.does.length === 0 ? (
          <span class="soft">as written</span>
        ) : (
          <ul class="plain">
            {person.does.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        )}
        {[person.clash, person.question].filter(Boolean).map((words) => (
          <p key={words} class="fit-remark">
            {sentence(words)}
          </p>
        ))}
      </td>
      <td role="cell" class="fit-figures">
        <strong>{person.expects}</strong>
        <span class="small">
          <span class="soft">inside</span> {percent(person.inside_before)} <span aria-hidden="true">→</span>
          <span class="unseen">becomes</span> {percent(person.inside_after)}
        </span>
      </td>
      <td role="cell" class="small">
        <Steps person={person} />
      </td>
    </tr>
  );
}

function Piece({ piece }: { readonly piece: PieceFit }) {
  if (piece.intent === "")
    return (
      <p>
        <strong>{piece.piece}</strong>: nothing is intended with it, so everybody does the plain version.
      </p>
    );
  return (
    <>
      <table class="fits" role="table">
        <caption>
          <strong>{piece.piece}</strong>: {piece.intent}. Of all scores {percent(piece.inside_before)} are inside as chalked,{" "}
          {percent(piece.inside_after)} fitted.
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            <th role="columnheader" scope="col">
              who
            </th>
            <th role="columnheader" scope="col">
              does
            </th>
            <th role="columnheader" scope="col">
              comes to
            </th>
            <th role="columnheader" scope="col">
              one step either way
            </th>
          </tr>
        </thead>
        <tbody role="rowgroup">
          {piece.people.map((person) => (
            <Row key={person.id} person={person} />
          ))}
        </tbody>
      </table>
      {piece.short_of.map((kit) => (
        <Said key={kit} weight="warning">
          {sentence(`${kit} for everybody at once`)}
        </Said>
      ))}
    </>
  );
}

/** What each person does so that every piece is what it is meant to be. */
export function FitTable({ plan }: { readonly plan: FitPlan }) {
  const fitted = plan.pieces.some((piece) => piece.intent !== "");
  return (
    <>
      {plan.notes.map((note) => (
        <p key={note} class="small soft">
          {sentence(note)}
        </p>
      ))}
      {plan.pieces.map((piece) => (
        <Piece key={piece.piece} piece={piece} />
      ))}
      {fitted && <CopyButton text={fitText(plan)} words="Copy who does what" />}
    </>
  );
}
