import { acceptCompletion, autocompletion, closeCompletion, completionKeymap, completionStatus } from "@codemirror/autocomplete";
import type { CompletionContext, CompletionResult } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap, isolateHistory } from "@codemirror/commands";
import { Annotation, EditorState, StateEffect, StateField, type Extension, type Range } from "@codemirror/state";
import { Decoration, EditorView, keymap, lineNumbers, WidgetType, type DecorationSet } from "@codemirror/view";

import { coloursOf, placedDoubts, type Colour, type PlacedDoubt, type ShownReading } from "./colours.ts";
import type { Diagnostic } from "../model/reading.ts";
import { suggestionsFor, wordsBefore, type NamedMovement } from "./completion.ts";
import { editorTheme } from "./editor_theme.ts";
import { lineStretch, type Stretch } from "./places.ts";

/** What the editor tells whoever made it. */
export interface EditorEvents {
  /** The text was changed by whoever writes. */
  readonly changed: (text: string) => void;
  /** The caret moved to another line, counted from 1. */
  readonly atLine: (line: number) => void;
}

export interface EditorOptions extends EditorEvents {
  readonly text: string;
  readonly label: string;
  readonly movements: () => readonly NamedMovement[];
}

/** The text of a board on the page, with what was understood of it. Positions are those of JavaScript strings. */
export interface BoardEditor {
  text(): string;
  /** Puts another text in place as one change that can be undone; `changed` is told unless it is quiet. */
  replace(text: string, how?: "quietly"): void;
  /** Shows a reading; one of another text than the editor's is passed over. */
  show(reading: ShownReading): void;
  /** Puts the caret at the start of a line, or of a stretch, and shows it for a moment. */
  goToLine(line: number): void;
  goTo(stretch: Stretch): void;
  /** Replaces the doubtful words by a repair of the doubt. */
  mend(doubt: Diagnostic, repair: string): void;
  undo(): void;
  focus(): void;
  destroy(): void;
}

const quiet = Annotation.define<boolean>();
const setReading = StateEffect.define<ShownReading>();
const setLit = StateEffect.define<Stretch | null>();

/** Whether two readings doubt the same thing: each reading brings doubts of its own. */
const isSameDoubt = (a: Diagnostic, b: Diagnostic): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

class DoubtWords extends WidgetType {
  constructor(
    readonly doubts: readonly Diagnostic[],
    readonly mend: (doubt: Diagnostic, repair: string) => void,
  ) {
    super();
  }

  override eq(other: DoubtWords): boolean {
    return (
      other.doubts.length === this.doubts.length &&
      other.doubts.every((each, index) => isSameDoubt(each, this.doubts[index] as Diagnostic))
    );
  }

  override toDOM(): HTMLElement {
    const block = document.createElement("div");
    block.className = "doubts-of-line";
    this.doubts.forEach((doubt, index) => block.append(this.row(doubt, index === 0)));
    return block;
  }

  override ignoreEvent(): boolean {
    return true;
  }

  private row(doubt: Diagnostic, first: boolean): HTMLElement {
    const row = document.createElement("div");
    row.className = `doubt doubt-${doubt.severity}`;
    const text = document.createElement("span");
    text.className = "doubt-text";
    text.textContent = doubt.text;
    row.append(text);
    if (doubt.hint && doubt.repairs.length === 0) {
      const hint = document.createElement("span");
      hint.className = "doubt-hint";
      hint.textContent = doubt.hint;
      row.append(" ", hint);
    }
    doubt.repairs.slice(0, 3).forEach((repair, index) => {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "doubt-repair";
      button.textContent = repair;
      if (first) button.title = `Alt+${index + 1} on this line`;
      button.tabIndex = -1; // the list beside the text is the way by keyboard
      button.addEventListener("click", () => {
        this.mend(doubt, repair);
      });
      row.append(" ", button);
    });
    return row;
  }
}

interface Shown {
  readonly placed: readonly PlacedDoubt[];
  readonly decorations: DecorationSet;
}

const colourMarks: Readonly<Record<Colour["as"], Decoration>> = {
  step: Decoration.mark({ class: "read-step" }),
  rule: Decoration.mark({ class: "read-rule" }),
  words: Decoration.mark({ class: "read-words" }),
  number: Decoration.mark({ class: "read-number" }),
};

/** Notes stand in the list only; what is doubtful or wrong stands below its line as well. */
const standsBelow = (doubt: Diagnostic): boolean => doubt.severity !== "note" || doubt.repairs.length > 0;

function decorationsOf(state: EditorState, reading: ShownReading, mend: DoubtWords["mend"]): Shown {
  const ranges: Range<Decoration>[] = [];
  for (const colour of coloursOf(reading))
    if (colour.to > colour.from) ranges.push(colourMarks[colour.as].range(colour.from, colour.to));
  const placed = placedDoubts(reading);
  const byLine = new Map<number, Diagnostic[]>();
  for (const { from, to, doubt } of placed) {
    if (to > from) ranges.push(Decoration.mark({ class: `under under-${doubt.severity}` }).range(from, to));
    if (!standsBelow(doubt)) continue;
    const end = state.doc.lineAt(from).to;
    byLine.set(end, [...(byLine.get(end) ?? []), doubt]);
  }
  for (const [end, doubts] of byLine)
    ranges.push(Decoration.widget({ widget: new DoubtWords(doubts, mend), block: true, side: 1 }).range(end));
  return { placed, decorations: Decoration.set(ranges, true) };
}

/** What is shown of the last reading; it moves along with the text until the next one comes. */
function readingField(mend: DoubtWords["mend"]): StateField<Shown> {
  return StateField.define<Shown>({
    create: () => ({ placed: [], decorations: Decoration.none }),
    update(shown, change) {
      for (const effect of change.effects) if (effect.is(setReading)) return decorationsOf(change.state, effect.value, mend);
      if (!change.docChanged) return shown;
      return {
        placed: shown.placed.map((each) => ({
          ...each,
          from: change.changes.mapPos(each.from, 1),
          to: change.changes.mapPos(each.to, -1),
        })),
        decorations: shown.decorations.map(change.changes),
      };
    },
    provide: (field) => EditorView.decorations.from(field, (shown) => shown.decorations),
  });
}

const litField = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(lit, change) {
    for (const effect of change.effects) {
      if (!effect.is(setLit)) continue;
      if (!effect.value) return Decoration.none;
      return Decoration.set(Decoration.line({ class: "lit-line" }).range(change.state.doc.lineAt(effect.value.from).from));
    }
    return lit.map(change.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

function completions(movements: () => readonly NamedMovement[]): (context: CompletionContext) => CompletionResult | null {
  return (context) => {
    const line = context.state.doc.lineAt(context.pos);
    const typed = wordsBefore(line.text.slice(0, context.pos - line.from));
    const found = suggestionsFor(typed.words, movements());
    if (found.length === 0) return null;
    return {
      from: line.from + typed.from,
      filter: false,
      options: found.map(({ word, name }) => ({ label: word, detail: name === word ? "" : name })),
    };
  };
}

/** Tab accepts the first suggestion, Enter only one that was chosen with the arrows; a closed list takes no key. */
const completion = (movements: () => readonly NamedMovement[]): Extension => [
  autocompletion({
    override: [completions(movements)],
    selectOnOpen: false,
    icons: false,
    activateOnTypingDelay: 0,
    interactionDelay: 0,
    defaultKeymap: false,
  }),
  keymap.of([
    {
      key: "Tab",
      run: (view) => {
        if (completionStatus(view.state) !== "active") return false;
        if (acceptCompletion(view)) return true;
        const down = completionKeymap.find((binding) => binding.key === "ArrowDown");
        down?.run?.(view);
        return acceptCompletion(view);
      },
    },
    ...completionKeymap,
  ]),
];

/** Alt with 1, 2 or 3 takes that repair of the first doubt on the caret's line that has one. */
function repairKeys(field: StateField<Shown>, mend: DoubtWords["mend"]): Extension {
  return EditorView.domEventHandlers({
    keydown(event, view) {
      const which = /^Digit([1-3])$/.exec(event.code)?.[1];
      if (!event.altKey || event.ctrlKey || event.metaKey || !which) return false;
      const line = view.state.doc.lineAt(view.state.selection.main.head);
      const here = view.state
        .field(field)
        .placed.find((each) => each.from >= line.from && each.from <= line.to && each.doubt.repairs.length > 0);
      const repair = here?.doubt.repairs[Number(which) - 1];
      if (!here || repair === undefined) return false;
      event.preventDefault();
      mend(here.doubt, repair);
      return true;
    },
  });
}

/**
 * Makes the editor inside `host`. It lives in a shadow root, whose style sheets the page's policy lets CodeMirror
 * make; colours come through the page's custom properties.
 */
export function makeBoardEditor(host: HTMLElement, options: EditorOptions): BoardEditor {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open", delegatesFocus: true });
  let line = 1;
  const field: StateField<Shown> = readingField((doubt, repair) => {
    mend(doubt, repair);
  });
  const view: EditorView = new EditorView({
    root,
    parent: root,
    state: EditorState.create({
      doc: options.text,
      extensions: [
        lineNumbers(),
        history(),
        field,
        litField,
        completion(options.movements),
        repairKeys(field, (doubt, repair) => {
          mend(doubt, repair);
        }),
        keymap.of([...historyKeymap, ...defaultKeymap]),
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({
          "aria-label": options.label,
          autocapitalize: "off",
          autocorrect: "off",
          spellcheck: "false",
        }),
        editorTheme,
        EditorView.updateListener.of((update) => {
          if (update.docChanged && !update.transactions.some((each) => each.annotation(quiet)))
            options.changed(update.state.doc.toString());
          const now = update.state.doc.lineAt(update.state.selection.main.head).number;
          if (now !== line) options.atLine((line = now));
        }),
      ],
    }),
  });

  function placeOf(doubt: Diagnostic): PlacedDoubt | undefined {
    // The words below a line stay while a newer reading says the same, so they may hold the doubt of an older one.
    return view.state.field(field).placed.find((each) => isSameDoubt(each.doubt, doubt));
  }
  function mend(doubt: Diagnostic, repair: string): void {
    const place = placeOf(doubt);
    if (!place || place.to <= place.from) return;
    view.dispatch({
      changes: { from: place.from, to: place.to, insert: repair },
      selection: { anchor: place.from + repair.length },
      annotations: isolateHistory.of("full"),
      userEvent: "input.mend",
    });
    view.focus();
  }
  function goTo(stretch: Stretch): void {
    view.dispatch({
      selection: { anchor: Math.min(stretch.from, view.state.doc.length) },
      effects: [setLit.of(stretch), EditorView.scrollIntoView(stretch.from, { y: "center" })],
    });
    view.focus();
  }
  return {
    text: () => view.state.doc.toString(),
    replace(text, how) {
      if (text === view.state.doc.toString()) return;
      closeCompletion(view);
      view.dispatch({
        changes: { from: 0, to: view.state.doc.length, insert: text },
        annotations: how === "quietly" ? [quiet.of(true), isolateHistory.of("full")] : isolateHistory.of("full"),
      });
    },
    show(reading) {
      if (reading.text === view.state.doc.toString()) view.dispatch({ effects: setReading.of(reading) });
    },
    goToLine(wanted) {
      const stretch = lineStretch(view.state.doc.toString(), wanted);
      if (stretch) goTo(stretch);
    },
    goTo,
    mend,
    undo() {
      historyKeymap[0]?.run?.(view);
    },
    focus() {
      view.focus();
    },
    destroy() {
      view.destroy();
    },
  };
}
