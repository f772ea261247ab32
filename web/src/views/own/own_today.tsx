import { useState } from "preact/hooks";
import { hasBegun, type OwnPiece, type OwnToday } from "../../model/own_today.ts";
import { clock, forecastText, isForecast, rangeText, scorePath, shownScores } from "../../model/scores.ts";
import { classScoresOf } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { sender } from "../../state/sender.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { dayWords, listWords } from "../../ui/words.ts";
import { OwnHour } from "./own_hour.tsx";
import { ScoreEntry, type Entered } from "../scores/score_entry.tsx";
import { useClassMoment } from "../scores/use_class_clock.ts";

/** Keeps the reader's own score: a new one goes by the outbox, a correction at once. */
async function keepOwn(classId: string, piece: OwnPiece, entered: Entered) {
  const lines = classScoresOf(classId).now.value.value ?? [];
  const kept = shownScores(lines, sender.outbox.value, classId, piece.piece).get(piece.id)?.kept ?? null;
  if (kept !== null) {
    const change = { version: kept.version, person: kept.person, piece: kept.piece, flag: kept.flag };
    const effort = entered.effort === null ? {} : { effort: entered.effort };
    const answer = await program.keepScore(kept.number, { ...change, ...effort, score: entered.score, done_as: entered.doneAs });
    return answer.ok ? null : answer.fault;
  }
  sender.send({
    path: scorePath(classId),
    how: "POST",
    body: {
      person: piece.id,
      piece: piece.piece,
      score: entered.score,
      done_as: entered.doneAs,
      ...(entered.effort === null ? {} : { effort: entered.effort }),
    },
    words: `my score ${entered.score}`,
  });
  return null;
}

function MyScore({ classId, piece }: { readonly classId: string; readonly piece: OwnPiece }) {
  const [open, setOpen] = useState(false);
  return (
    <LookedAt
      at={classScoresOf(classId)}
      show={(lines) => {
        const shown = shownScores(lines, sender.outbox.value, classId, piece.piece).get(piece.id) ?? null;
        return (
          <>
            <button
              type="button"
              class={shown ? "" : "first"}
              disabled={shown !== null && shown.kept === null}
              onClick={() => {
                setOpen(true);
              }}
            >
              {shown ? `My score: ${shown.score}. Correct it` : "Enter my score"}
            </button>
            {open ? (
              <ScoreEntry
                piece={{ ...piece, people: [] }}
                person={piece}
                kept={shown?.kept ?? null}
                partners={[]}
                mayNote={false}
                keep={(entered) => keepOwn(classId, piece, entered)}
                close={() => {
                  setOpen(false);
                }}
              />
            ) : null}
          </>
        );
      }}
    />
  );
}

/** 'Heat 2 of 3, lane 4', as far as the board has heats or lanes. */
function placeWords(piece: OwnPiece): string {
  const heat = piece.heat === null ? "" : `heat ${String(piece.heat)} of ${String(piece.heats)}`;
  const place = piece.place === null ? "" : `${piece.lanes ? "lane" : "place"} ${String(piece.place)}`;
  return [heat, place].filter(Boolean).join(", ");
}

function Piece({ classId, piece }: { readonly classId: string; readonly piece: OwnPiece }) {
  const { forecast, form } = piece;
  const target = isForecast(forecast) ? forecastText(form, forecast, forecast.p50) : "none: as it feels right";
  const range = rangeText(form, forecast);
  return (
    <section class="sheet stack" aria-label={piece.title}>
      <div>
        <h2>{piece.title}</h2>
        {piece.scheme ? <p class="soft">{piece.scheme}</p> : null}
      </div>
      <ul class="plain tight own-lines">
        {piece.lines.map((line, index) => (
          <li key={index}>{line}</li>
        ))}
      </ul>
      <dl class="own-figures">
        <div>
          <dt>Target</dt>
          <dd>
            <strong>{form === "reps" && isForecast(forecast) ? `${target} reps` : target}</strong>
            {range === `about ${target}` || !isForecast(forecast) ? null : <span class="soft"> four in five days: {range}</span>}
          </dd>
        </div>
        {piece.cap_s === null ? null : (
          <div>
            <dt>Cap</dt>
            <dd>{clock(piece.cap_s)}</dd>
          </div>
        )}
        {placeWords(piece) === "" ? null : (
          <div>
            <dt>You stand</dt>
            <dd>{placeWords(piece)}</dd>
          </div>
        )}
        {piece.starts_s > 0 ? (
          <div>
            <dt>You go</dt>
            <dd>{clock(piece.starts_s)} after the start</dd>
          </div>
        ) : null}
        {piece.starts_with ? (
          <div>
            <dt>You start with</dt>
            <dd>{piece.starts_with}</dd>
          </div>
        ) : null}
        {piece.partners.length > 0 ? (
          <div>
            <dt>With</dt>
            <dd>{listWords(piece.partners)}</dd>
          </div>
        ) : null}
      </dl>
      <MyScore classId={classId} piece={piece} />
    </section>
  );
}

/** The reader's next class: their version, counts, target, partner and cautions. */
export function OwnTodayView({ today, id }: { readonly today: OwnToday; readonly id: string }) {
  const clockState = useClassMoment(today.class)?.moment.state ?? "ready";
  const begun = hasBegun(today, new Date()) || clockState !== "ready";
  return (
    <div class="stack">
      <p>
        <strong>
          {today.date ? dayWords(today.date) : ""}
          {today.start ? `, ${today.start}` : ""}
        </strong>
        {today.board ? `: ${today.board}` : ""}
      </p>
      {today.told.length > 0 ? (
        <div>
          <ul class="plain tight" aria-label="For you today">
            {today.told.map((action) => (
              <li key={action} class="action">
                {action}
              </li>
            ))}
          </ul>
          <p class="small soft">Where this says less than the counts below, this goes first.</p>
        </div>
      ) : null}
      {today.pieces.map((piece) => (
        <Piece key={piece.title} classId={today.class} piece={piece} />
      ))}
      {begun ? <OwnHour classId={today.class} person={id} /> : null}
      {today.text ? (
        <details>
          <summary>The board</summary>
          <pre class="chalk">{today.text}</pre>
        </details>
      ) : null}
    </div>
  );
}
