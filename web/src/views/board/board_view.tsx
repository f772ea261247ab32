import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { BoardEditor } from "../../editor/board_editor.ts";
import { BoardText } from "../../editor/board_text.tsx";
import type { Fault } from "../../model/fault.ts";
import { boards, classes, movements } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { goTo } from "../../state/route.ts";
import { Said } from "../../ui/said.tsx";
import { BoardModel, type ReadText } from "./board_model.ts";
import "./board.css";
import { BoardHead } from "./board_head.tsx";
import { BothTexts } from "./both_texts.tsx";
import { DoubtList } from "./doubt_list.tsx";
import { LastTimeLine } from "./last_time_line.tsx";
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
    boards.want();
    classes.want();
    movements.want();
    return () => {
      model.stop();
    };
  }, [model]);
  return model;
}

function ReadBack({ read, text }: { readonly read: ReadText | null; readonly text: string }) {
  if (!read || text.trim() === "")
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

function RightSide({ model, showLine }: { readonly model: BoardModel; readonly showLine: (line: number) => void }) {
  const picture = model.picture.value;
  const stale = picture !== null && (picture.text !== model.text.value || model.rehearsing.value);
  return (
    <section class={`rehearsal-side${stale ? " stale" : ""}`} aria-label="The rehearsal" aria-busy={model.rehearsing.value}>
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
          movements={movements.now.value.value ?? []}
          showLine={showLine}
        />
      )}
      {!picture && model.rehearsing.value && <p class="soft">Rehearsing…</p>}
    </section>
  );
}

/** The class that a board is for: the one asked for in the address, else the first that has it. */
function classFor(id: string | null): string | null {
  const rows = classes.now.value.value ?? [];
  const asked = new URLSearchParams(location.search).get("class");
  return (rows.find((row) => row.id === asked) ?? rows.find((row) => row.board === id && id !== null))?.id ?? null;
}

/** One board: its text with live reading on the left, its rehearsal on the right. */
export function BoardView({ id }: { readonly id: string | null }) {
  const model = useBoardModel();
  const editor = useRef<BoardEditor | null>(null);
  const [opened, setOpened] = useState(0);
  const [fault, setFault] = useState<Fault | null>(null);
  const tidiedFrom = useSignal<string | null>(null);
  const ready = classes.now.value.value !== null;
  useEffect(() => {
    if (!ready || (opened > 0 && model.boardId.peek() === id)) return;
    setOpened(0);
    void model.open(id, classFor(id)).then(setFault);
    const until = model.read.subscribe((read) => {
      if (read) setOpened((before) => before || Date.now());
    });
    return until;
  }, [model, id, ready]);
  const read = model.read.value;
  const shown = useMemo(
    () => read && { text: read.text, understood: read.reading.understood, doubts: read.reading.diagnostics },
    [read],
  );
  const showLine = (line: number): void => {
    editor.current?.goToLine(line);
  };
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
    if (newId !== null && model.boardId.value === newId) goTo(`/board/${newId}`);
  };
  const gymClass = (classes.now.value.value ?? []).find((row) => row.id === model.look.value.classId) ?? null;
  return (
    <div class="board-view">
      <BoardHead
        model={model}
        rows={boards.now.value.value ?? []}
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
      {fault && fault.status !== 0 && (
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
          {opened > 0 || model.gone.value ? (
            <BoardText
              key={model.boardId.value ?? "new"}
              text={model.text.value}
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
          <ReadBack read={read} text={model.text.value} />
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
          <RightSide model={model} showLine={showLine} />
        </div>
      </div>
    </div>
  );
}
