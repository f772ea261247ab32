import { useState } from "preact/hooks";
import { idFromWords } from "../../editor/draft.ts";
import type { BoardRow } from "../../model/gym.ts";
import { goTo } from "../../state/route.ts";
import type { BoardModel, Saving } from "./board_model.ts";

interface BoardHeadProps {
  readonly model: BoardModel;
  readonly rows: readonly BoardRow[];
  /** No class has this board. */
  readonly unused: boolean;
  /** The text is a tidied one that can be put back. */
  readonly tidied: boolean;
  readonly tidy: () => void;
  readonly undoTidy: () => void;
  /** Saves under a new name, or with null under the board's own. */
  readonly save: (newId: string | null) => void;
}

const savingWords: Readonly<Record<Saving, string>> = {
  saved: "Saved",
  changed: "Not saved yet; kept in this browser",
  saving: "Saving…",
  new: "A new board; kept in this browser",
};

/** Whether the board is saved; one with errors is kept as a draft, and no class is rehearsed with it. */
export function savedWords(saving: Saving, errors: number): string {
  if (errors === 0 || saving === "saving") return savingWords[saving];
  const why = errors === 1 ? "an error" : `${errors} errors`;
  return saving === "saved"
    ? `Saved as a draft: with ${why} on it no class is rehearsed`
    : `${savingWords[saving]}. With ${why} on it, it is saved as a draft that is not rehearsed`;
}

function NameIt({ model, save, done }: Pick<BoardHeadProps, "model" | "save"> & { readonly done: () => void }) {
  const [words, setWords] = useState(model.read.value?.reading.title ?? "");
  return (
    <form
      class="name-it"
      onSubmit={(event) => {
        event.preventDefault();
        save(idFromWords(words));
        done();
      }}
    >
      <label>
        Name of the board
        <input
          autoFocus
          value={words}
          maxLength={60}
          onInput={(event) => {
            setWords(event.currentTarget.value);
          }}
        />
      </label>
      <button type="submit" class="first">
        Save as {idFromWords(words)}
      </button>
      <button type="button" class="bare" onClick={done}>
        Not now
      </button>
    </form>
  );
}

/** Which board lies open, whether it is saved, and what can be done with it. */
export function BoardHead({ model, rows, unused, tidied, tidy, undoTidy, save }: BoardHeadProps) {
  const [naming, setNaming] = useState(false);
  const id = model.boardId.value;
  return (
    <header class="board-head">
      <h1 class="unseen">Board</h1>
      <label class="board-choice">
        <span class="unseen">Board</span>
        <select
          value={id ?? ""}
          onChange={(event) => {
            goTo(event.currentTarget.value ? `/board/${event.currentTarget.value}` : "/board");
          }}
        >
          <option value="">New board</option>
          {rows.map((row) => (
            <option key={row.id} value={row.id}>
              {row.title || row.id}
            </option>
          ))}
        </select>
      </label>
      <div class="row">
        <button
          type="button"
          class={model.saving.value === "saved" ? "" : "first"}
          disabled={model.saving.value === "saved" || model.saving.value === "saving"}
          onClick={() => {
            if (id === null) setNaming(true);
            else save(null);
          }}
        >
          Save
        </button>
        {id !== null && (
          <button
            type="button"
            onClick={() => {
              setNaming(true);
            }}
          >
            Save as…
          </button>
        )}
        <button type="button" onClick={tidy}>
          Tidy
        </button>
        {tidied && (
          <button type="button" onClick={undoTidy}>
            Undo tidy
          </button>
        )}
        {id !== null && (
          <a class="button" href={`/wall/${id}`}>
            For the members
          </a>
        )}
        {id !== null && unused && (
          <a class="button" href={`/classes/new?board=${id}`}>
            Make a class of it
          </a>
        )}
      </div>
      <p class="saving small soft" role="status">
        {savedWords(model.saving.value, model.errors.value)}
      </p>
      {naming && (
        <NameIt
          model={model}
          save={save}
          done={() => {
            setNaming(false);
          }}
        />
      )}
    </header>
  );
}
