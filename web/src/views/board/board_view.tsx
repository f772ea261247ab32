import { useComputed, useSignal } from "@preact/signals";
import { memo } from "preact/compat";
import { useCallback, useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { BoardEditor } from "../../editor/board_editor.ts";
import { BoardText } from "../../editor/board_text.tsx";
import type { Fault } from "../../model/fault.ts";
import { boards, classes, gym, movements } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { goTo } from "../../state/route.ts";
import { PersonPanel } from "../../charts/person_panel.tsx";
import type { Rehearsal } from "../../model/rehearsal.ts";
import { Said } from "../../ui/said.tsx";
import { BoardModel, type ReadText } from "./board_model.ts";
import "./board.css";
import { BoardHead } from "./board_head.tsx";
import { BothTexts } from "./both_texts.tsx";
import { DoubtList } from "./doubt_list.tsx";
import { LastTimeLine } from "../last_time/last_time_line.tsx";
import { AdviceSection } from "../advice/advice_section.tsx";
import { drillStretches } from "../advice/advice_words.ts";
import { FitTable } from "../advice/fit_table.tsx";
import { HourPlanView } from "../advice/hour_plan.tsx";
import { WarmUp } from "../advice/warm_up.tsx";
import { Repairs } from "../repairs/repairs.tsx";
import { RehearsalSide } from "./rehearsal_side.tsx";
import { Switches } from "./switches.tsx";

/** The browser's shelf for drafts; one that forgets where the browser has none. */
function shelfOfBrowser(): Storage | { getItem: () => null; setItem: () => never; removeItem: () => void } {
  try {
    return globalThis.localStorage;
  } catch {
    return {
      getItem: () => null,
      setItem: () => {
        throw new Error("no shelf");
      },
      removeItem: () => undefined,
    };
  }
}

function useBoardModel(): BoardModel {
  const known = useComputed(() => movements.now.value.value ?? []);
  const model = useMemo(() => new BoardModel({ program, shelf: shelfOfBrowser(), movements: known }), [known]);
  useEffect(() => {
    gym.want();
    boards.want();
    classes.want();
    movements.want();
    return () => {
      model.stop();
    };
  }, [model]);
  return model;
}

function ReadBack({ read, empty }: { readonly read: ReadText | null; readonly empty: boolean }) {
  if (!read || empty)
    return (
      <p class="soft">
        Chalk the session as on the wall: <code>5 rounds for time</code>, <code>400 m run</code>, <code>12 pull-ups</code>.
      </p>
    );
  const { reading, fixed_seconds } = read.reading;
  return (
    <section class="read-back" aria-label="The board read back">
      <ol>
        {reading.map((sentence, index) => (
          <li key={index}>{sentence}</li>
        ))}
      </ol>
      {fixed_seconds !== null && <p class="small soft">Fixed length {Math.floor(fixed_seconds / 60)}:{String(fixed_seconds % 60).padStart(2, "0")}.</p>}
    </section>
  );
}

interface RightSideProps {
  readonly model: BoardModel;
  readonly chosen: string | null;
  readonly choose: (person: string) => void;
  readonly showLine: (line: number) => void;
  /** Puts another text in place, as one change that can be undone. */
  readonly write: (text: string) => void;
}

const BoardRepairs = memo(function BoardRepairs({ model, showLine, write }: Pick<RightSideProps, "model" | "showLine" | "write">) {
  const before = model.untaken.value;
  return (
    <Repairs
      search={model.repairs}
      cuts={model.hourPlan}
      now={model.adviceQuestion.value}
      take={(repair) => {
        write(model.take(repair));
        showLine(repair.lines[0] ?? 1);
      }}
      undo={
        before === null
          ? null
          : () => {
              write(before);
              model.putBack();
            }
      }
    />
  );
});

const BoardAdvice = memo(function BoardAdvice({ model }: Pick<RightSideProps, "model">) {
  const now = model.adviceQuestion.value;
  return (
    <>
      <AdviceSection
        name="What each does"
        doing="Fitting the board to each of them"
        act="Fit the board to the people"
        search={model.fits}
        now={now}
        show={(plan) => <FitTable plan={plan} />}
      />
      <AdviceSection
        name="The warm-up"
        doing="Choosing drills"
        act="Choose a warm-up"
        search={model.warmUp}
        now={now}
        show={(plan) => <WarmUp plan={plan} />}
      />
      <AdviceSection
        name="What to cut, and the kit"
        doing="Trying what each cut gives"
        act="Look what to cut first"
        search={model.hourPlan}
        now={now}
        show={(plan) => <HourPlanView plan={plan} />}
      />
    </>
  );
});

function RightSide({ model, chosen, choose, showLine, write }: RightSideProps) {
  const picture = model.picture.value;
  const stale = useComputed(() => {
    const shown = model.picture.value;
    return shown !== null && (shown.text !== model.text.value || model.rehearsing.value);
  });
  const help = useMemo(
    () => (
      <>
        <BoardRepairs model={model} showLine={showLine} write={write} />
        <BoardAdvice model={model} />
      </>
    ),
    [model, showLine, write],
  );
  const warmUp = model.warmUp.found.value;
  const drills = useMemo(
    () => (warmUp && picture ? drillStretches(warmUp.plan.together.drills, picture.rehearsal.timetable.boxes) : []),
    [warmUp, picture],
  );
  return (
    <section class={`rehearsal-side${stale.value ? " stale" : ""}`} aria-label="The rehearsal" aria-busy={model.rehearsing.value}>
      {model.errors.value > 0 && (
        <Said weight="problem">
          A board with errors is not rehearsed. Mend {model.errors.value === 1 ? "the one" : `the ${model.errors.value}`} on
          the left.
        </Said>
      )}
      {model.rehearsalFault.value !== null && (
        <Said weight="problem" alert>
          {model.rehearsalFault.value}.
        </Said>
      )}
      {model.errors.value === 0 && model.read.value !== null && !model.hasWork.value && (
        <Said weight="note">Nothing to rehearse yet: no line of work stands on the board.</Said>
      )}
      {picture && (model.hasWork.value || model.errors.value > 0) && (
        <RehearsalSide
          rehearsal={picture.rehearsal}
          lanes={model.lanes.value}
          chosen={chosen}
          choose={choose}
          showLine={showLine}
          drills={drills}
        >
          {help}
        </RehearsalSide>
      )}
      {!picture && model.rehearsing.value && <p class="soft">Rehearsing…</p>}
    </section>
  );
}

interface NumbersProps {
  readonly rehearsal: Rehearsal;
  readonly person: string | null;
  readonly showLine: (line: number) => void;
}

function Numbers({ rehearsal, person, showLine }: NumbersProps) {
  const known = movements.now.value.value;
  const byId = useMemo(() => new Map((known ?? []).map((each) => [each.id, each])), [known]);
  if (person === null) return null;
  return <PersonPanel rehearsal={rehearsal} person={person} movements={byId} show={showLine} />;
}

/** The class that a board is for: the one asked for in the address, else the first that has it, else the next one. */
function classFor(id: string | null): string | null {
  const rows = classes.now.value.value ?? [];
  const asked = new URLSearchParams(location.search).get("class");
  const next = gym.now.value.value?.next_class ?? null;
  const found =
    rows.find((row) => row.id === asked) ??
    rows.find((row) => row.board === id) ??
    rows.find((row) => row.id === next);
  return found?.id ?? null;
}

/** One board: its text with live reading on the left, its rehearsal on the right. */
export function BoardView({ id }: { readonly id: string | null }) {
  const model = useBoardModel();
  const editor = useRef<BoardEditor | null>(null);
  const opened = useRef<string | null | undefined>(undefined);
  const [editing, setEditing] = useState(0); // counts the boards opened: each has an editor of its own
  const [chosen, setChosen] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const tidiedFrom = useSignal<string | null>(null);
  const ready = classes.now.value.value !== null && gym.now.value.value !== null;
  useEffect(() => {
    if (!ready || opened.current === id) return;
    opened.current = id;
    tidiedFrom.value = null;
    void model.open(id, classFor(id)).then((wrong) => {
      setFault(wrong);
      if (!wrong) setEditing((before) => before + 1);
    });
  }, [model, id, ready]);
  const read = model.read.value;
  const shown = useComputed(() => {
    const now = model.read.value;
    return now && { text: now.text, understood: now.reading.understood, doubts: now.reading.diagnostics };
  });
  const empty = useComputed(() => model.text.value.trim() === "");
  const showLine = useCallback((line: number): void => {
    editor.current?.goToLine(line);
  }, []);
  const write = useCallback((text: string): void => {
    editor.current?.replace(text);
  }, []);
  const tidy = async (): Promise<void> => {
    const before = model.text.value;
    const text = await model.tidied();
    if (text === null || text === before) return;
    tidiedFrom.value = before;
    editor.current?.replace(text);
  };
  const undoTidy = (): void => {
    if (tidiedFrom.value !== null) editor.current?.replace(tidiedFrom.value);
    tidiedFrom.value = null;
  };
  const save = async (newId: string | null): Promise<void> => {
    await model.save(newId);
    if (newId === null || model.boardId.value !== newId) return;
    opened.current = newId;
    goTo(`/board/${newId}`);
  };
  const gymClass = (classes.now.value.value ?? []).find((row) => row.id === model.look.value.classId) ?? null;
  return (
    <div class="board-view">
      <BoardHead
        model={model}
        rows={boards.now.value.value ?? []}
        unused={ready && !(classes.now.value.value ?? []).some((row) => row.board === id)}
        tidied={tidiedFrom.value !== null}
        tidy={() => void tidy()}
        undoTidy={undoTidy}
        save={(newId) => void save(newId)}
      />
      {model.gone.value && (
        <Said weight="problem" alert>
          The program does not answer. {model.draftless.value ? "Keep this page open: the text is only here." : "Your text is kept in this browser"}
          {model.draftless.value ? "" : " and is read again as soon as the program is back."}
        </Said>
      )}
      {fault && (
        <Said weight="problem" alert>
          {fault.text}. <a href="/board">To an empty board</a>
        </Said>
      )}
      {model.saveFault.value !== null && (
        <Said weight="problem" alert>
          Not saved: {model.saveFault.value}. The text is kept here.
        </Said>
      )}
      {model.conflict.value && (
        <BothTexts
          mine={model.text.value}
          conflict={model.conflict.value}
          settle={(choice) => {
            model.settleConflict(choice);
            editor.current?.replace(model.text.value, "quietly");
          }}
        />
      )}
      <div class="board-sides">
        <section class="text-side" aria-label="The text">
          {editing > 0 ? (
            <BoardText
              key={editing}
              text={model.text.peek()}
              shown={shown}
              movements={movements.now.value.value ?? []}
              changed={(text) => {
                model.write(text);
              }}
              atLine={() => undefined}
              made={(made) => {
                editor.current = made;
              }}
            />
          ) : (
            <div class="board-text" />
          )}
          <DoubtList
            doubts={read?.reading.diagnostics ?? []}
            goTo={(doubt) => {
              editor.current?.goToLine(doubt.line);
            }}
            mend={(doubt, repair) => {
              editor.current?.mend(doubt, repair);
            }}
          />
          <ReadBack read={read} empty={empty.value} />
          {model.lastTime.value && <LastTimeLine last={model.lastTime.value} />}
        </section>
        <div class="right-side">
          <Switches
            look={model.look.value}
            gymClass={gymClass}
            classes={classes.now.value.value ?? []}
            heads={model.picture.value?.rehearsal.people.length ?? null}
            places={model.picture.value?.rehearsal.places ?? []}
            change={(change) => {
              model.lookAt(change);
            }}
          />
          <RightSide
            model={model}
            chosen={chosen}
            choose={setChosen}
            showLine={showLine}
            write={write}
          />
        </div>
        {model.picture.value && (
          <aside class="panel-side" aria-label="Numbers of one person">
            <Numbers rehearsal={model.picture.value.rehearsal} person={chosen} showLine={showLine} />
          </aside>
        )}
      </div>
    </div>
  );
}
