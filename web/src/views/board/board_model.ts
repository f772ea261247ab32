import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { Answer } from "../../api/client.ts";
import type { Questions, WhatIf } from "../../api/questions.ts";
import { lanesOf, type Lane } from "../../charts/lanes.ts";
import { dropDraft, keepDraft, opening, takeDraft, type DraftShelf } from "../../editor/draft.ts";
import { latest, type Latest, type Waits } from "../../editor/latest.ts";
import type { Fault } from "../../model/fault.ts";
import type { LastTime, Movement } from "../../model/gym.ts";
import type { Reading } from "../../model/reading.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import type { Change } from "../../model/repairs.ts";
import type { FitPlan } from "../../model/fits.ts";
import type { HourPlan } from "../../model/hour_plan.ts";
import type { WarmUpPlan } from "../../model/warm_up.ts";
import { AdviceSearch } from "../advice/advice_search.ts";
import { RepairSearch } from "../repairs/repair_search.ts";

/** What the coach changes for one look at a class; nothing of it is kept. */
export interface Look {
  /** Null: everybody of the gym, on no date. */
  readonly classId: string | null;
  /** Null: those who are booked. */
  readonly heads: number | null;
  readonly rain: boolean;
  /** The kind of place that is broken today, and how many; null: none beside the class's own faults. */
  readonly out: { readonly place: string; readonly count: number } | null;
  readonly runs: number;
  readonly seed: number;
}

export const plainLook: Look = { classId: null, heads: null, rain: false, out: null, runs: 200, seed: 1 };

/** The question that a look asks of the program. */
export function whatIfOf(text: string, look: Look): WhatIf {
  return {
    text,
    ...(look.classId === null ? {} : { class: look.classId }),
    ...(look.heads === null ? {} : { heads: look.heads }),
    ...(look.out === null ? {} : { out: { [look.out.place]: look.out.count } }),
    indoors: look.rain,
    runs: look.runs,
    seed: look.seed,
  };
}

/** Two texts of one board: what stands here, and what somebody else saved meanwhile. */
export interface Conflict {
  readonly theirs: string;
  readonly theirVersion: string | null;
}

/** A reading with the text that was read. */
export interface ReadText {
  readonly text: string;
  readonly reading: Reading;
}

/** The last whole rehearsal with what it is of. */
export interface Picture {
  readonly rehearsal: Rehearsal;
  readonly text: string;
  readonly look: Look;
}

export type Saving = "saved" | "changed" | "saving" | "new";

type Program = Pick<Questions, "read" | "rehearse" | "repairs" | "fits" | "hourPlan" | "warmUp" | "tidy" | "board" | "keepBoard" | "boardLast">;

interface Surroundings {
  readonly program: Program;
  readonly shelf: DraftShelf;
  readonly movements: ReadonlySignal<readonly Movement[]>;
  readonly waits?: Waits;
}

/** Milliseconds. A key is answered at once; a rehearsal waits for the end of a word, a retry for the program. */
const readPause = 0;
const rehearsePause = 180;
const retryPause = 2000;

/** More would not tell two small changes apart better, and take longer than a coach looks. */
const adviceRuns = 200;

/** Whether anything that a change of the board may mend was found. */
const isWorthRepairing = (rehearsal: Rehearsal | undefined): boolean =>
  rehearsal?.findings.some((each) => each.severity !== "note") ?? false;

const isGone = (fault: Fault): boolean => fault.status === 0;

/** The state of the board's page and everything that can be done on it; no DOM. */
export class BoardModel {
  /** The board that lies open; null for one without a name. */
  readonly boardId = signal<string | null>(null);
  readonly text = signal("");
  readonly read = signal<ReadText | null>(null);
  readonly picture = signal<Picture | null>(null);
  readonly look = signal<Look>(plainLook);
  readonly rehearsing = signal(false);
  /** Why there is no newer picture; null if there is nothing to say. */
  readonly rehearsalFault = signal<string | null>(null);
  readonly saving = signal<Saving>("new");
  readonly saveFault = signal<string | null>(null);
  readonly conflict = signal<Conflict | null>(null);
  readonly lastTime = signal<LastTime | null>(null);
  /** The program does not answer. */
  readonly gone = signal(false);
  /** The browser keeps no drafts. */
  readonly draftless = signal(false);

  readonly repairs: RepairSearch;
  readonly fits: AdviceSearch<FitPlan>;
  readonly hourPlan: AdviceSearch<HourPlan>;
  readonly warmUp: AdviceSearch<WarmUpPlan>;
  /** What a search for advice would be asked; null while the board cannot be rehearsed. */
  readonly adviceQuestion: ReadonlySignal<WhatIf | null>;
  /** The text before the proposal that was taken, if nothing else was written since; null otherwise. */
  readonly untaken: ReadonlySignal<string | null>;

  readonly errors: ReadonlySignal<number>;
  readonly hasWork: ReadonlySignal<boolean>;
  readonly lanes: ReadonlySignal<readonly Lane[]>;

  private version: string | null = null;
  private kept = "";
  private opened = 0;
  /** The board was opened or a switch thrown: repairs are looked for without being asked. Not while somebody writes. */
  private unasked = false;
  private readonly program: Program;
  private readonly shelf: DraftShelf;
  private readonly reader: Latest<string>;
  private readonly rehearser: Latest<{ readonly text: string; readonly look: Look }>;
  private readonly retrier: Latest<null>;

  constructor({ program, shelf, movements, waits }: Surroundings) {
    this.program = program;
    this.shelf = shelf;
    const within = waits ? { waits } : {};
    this.errors = computed(
      () => this.read.value?.reading.diagnostics.filter((each) => each.severity === "error").length ?? 0,
    );
    this.hasWork = computed(() => this.read.value?.reading.understood.some((each) => each.as === "step") ?? false);
    this.repairs = new RepairSearch(program, waits);
    this.fits = new AdviceSearch(program.fits, waits);
    this.hourPlan = new AdviceSearch(program.hourPlan, waits);
    this.warmUp = new AdviceSearch(program.warmUp, waits);
    this.adviceQuestion = computed(() =>
      this.errors.value > 0 || !this.hasWork.value || this.read.value?.text !== this.text.value
        ? null
        : whatIfOf(this.text.value, { ...this.look.value, runs: Math.min(this.look.value.runs, adviceRuns) }),
    );
    this.untaken = computed(() => {
      const taken = this.repairs.taken.value;
      return taken !== null && taken.repair.text === this.text.value ? taken.before : null;
    });
    this.lanes = computed(() => {
      const drawn = new Map(movements.value.map((each) => [each.id, each]));
      return this.picture.value ? lanesOf(this.picture.value.rehearsal, drawn) : [];
    });
    this.reader = latest({
      ask: (text: string, stop) => program.read(text, stop),
      answered: (answer, text) => {
        this.wasRead(answer, text);
      },
      pause: readPause,
      ...within,
    });
    this.rehearser = latest({
      ask: ({ text, look }: { readonly text: string; readonly look: Look }, stop) =>
        program.rehearse(whatIfOf(text, look), stop),
      answered: (answer, { text, look }) => {
        this.wasRehearsed(answer, text, look);
      },
      pause: rehearsePause,
      ...within,
    });
    this.retrier = latest({
      ask: () => Promise.resolve(),
      answered: () => {
        this.reader.askNow(this.text.value);
      },
      pause: retryPause,
      ...within,
    });
  }

  /** Opens a board, with the draft of it if there is one; null opens an empty one. What is wrong, if it is. */
  async open(id: string | null, classId: string | null): Promise<Fault | null> {
    const mine = ++this.opened;
    const answer = id === null ? null : await this.program.board(id);
    if (mine !== this.opened) return null;
    if (answer && !answer.ok) return answer.fault;
    const kept = answer ? answer.value : { text: "", version: null };
    const found = opening(kept, takeDraft(this.shelf, id ?? ""));
    this.boardId.value = id;
    this.version = found.version;
    this.kept = kept.text;
    this.conflict.value =
      found.kind === "both-changed" ? { theirs: found.theirs, theirVersion: found.theirVersion } : null;
    this.saveFault.value = null;
    this.rehearsalFault.value = null;
    this.picture.value = null;
    this.read.value = null;
    this.lastTime.value = null;
    for (const search of this.searches()) search.forget();
    this.unasked = true;
    this.look.value = { ...plainLook, classId };
    this.set(found.text);
    if (id !== null) void this.lookBack(id, mine);
    return null;
  }

  /** The text was changed by whoever writes. */
  write(text: string): void {
    this.unasked = false;
    this.set(text);
    const id = this.boardId.value ?? "";
    if (text === this.kept) dropDraft(this.shelf, id);
    else this.draftless.value = !keepDraft(this.shelf, id, { text, version: this.version });
  }

  /** Looks at the class under other circumstances, at once. */
  lookAt(change: Partial<Look>): void {
    this.look.value = { ...this.look.value, ...change };
    this.unasked = true;
    for (const search of this.searches()) search.leave();
    this.rehearse("now");
  }

  /** The board in its tidy form; null if it cannot be had, which is said. */
  async tidied(): Promise<string | null> {
    const answer = await this.program.tidy(this.text.value);
    if (answer.ok) return answer.value.text;
    this.failed(answer.fault);
    return null;
  }

  /** Saves the text under the board's name, or a new one's. What somebody else saved meanwhile is shown beside. */
  async save(newId: string | null = null): Promise<void> {
    const id = newId ?? this.boardId.value;
    if (id === null) return;
    const text = this.text.value;
    this.saving.value = "saving";
    this.saveFault.value = null;
    const answer = await this.program.keepBoard(id, text, newId === null ? this.version : null);
    if (answer.ok) this.wasSaved(id, text, answer.value.version);
    else if (answer.fault.status === 409 && newId === null) await this.bothChanged(id);
    else if (answer.fault.status === 409) this.saveFault.value = `a board is called ${id} already: give another name`;
    else this.saveFault.value = answer.fault.text;
    if (!answer.ok && isGone(answer.fault)) this.failed(answer.fault);
    this.settle();
  }

  /** Ends a conflict: mine stays and the next save goes over theirs, or theirs takes its place. */
  settleConflict(choice: "mine" | "theirs"): void {
    const conflict = this.conflict.value;
    if (!conflict) return;
    this.version = conflict.theirVersion;
    this.kept = conflict.theirs;
    this.conflict.value = null;
    this.write(choice === "mine" ? this.text.value : conflict.theirs);
  }

  /** The board's text with a proposal in it; the caller shows it, which tells `write`. */
  take(repair: Change): string {
    this.repairs.taken.value = { repair, before: this.text.value };
    return repair.text;
  }

  /** The proposal is out of the text again. */
  putBack(): void {
    this.repairs.taken.value = null;
  }

  stop(): void {
    for (const search of this.searches()) search.leave();
    this.opened += 1;
    this.reader.stop();
    this.rehearser.stop();
    this.retrier.stop();
  }

  private searches(): readonly AdviceSearch<unknown>[] {
    return [this.repairs, this.fits, this.hourPlan, this.warmUp];
  }

  private set(text: string): void {
    this.text.value = text;
    this.settle();
    this.reader.askNow(text);
  }

  private settle(): void {
    if (this.boardId.value === null) this.saving.value = "new";
    else this.saving.value = this.text.value === this.kept ? "saved" : "changed";
  }

  private wasRead(answer: Answer<Reading>, text: string): void {
    if (!answer.ok) {
      this.failed(answer.fault);
      return;
    }
    this.gone.value = false;
    const first = this.read.value === null;
    this.read.value = { text, reading: answer.value };
    this.rehearse(first ? "now" : "when the writing pauses");
  }

  private wasRehearsed(answer: Answer<Rehearsal>, text: string, look: Look): void {
    this.rehearsing.value = false;
    if (!answer.ok) {
      this.failed(answer.fault);
      return;
    }
    this.rehearsalFault.value = null;
    this.picture.value = { rehearsal: answer.value, text, look };
    this.lookForRepairs();
  }

  private lookForRepairs(): void {
    const asked = this.adviceQuestion.value;
    if (!this.unasked || asked === null || !isWorthRepairing(this.picture.value?.rehearsal)) return;
    this.unasked = false;
    this.repairs.lookUnasked(asked);
  }

  private rehearse(when: "now" | "when the writing pauses"): void {
    const read = this.read.value;
    if (!read || read.text !== this.text.value) return;
    this.rehearsalFault.value = null;
    if (this.errors.value > 0 || !this.hasWork.value) {
      this.rehearser.stop();
      this.rehearsing.value = false;
      return;
    }
    this.rehearsing.value = true;
    const question = { text: read.text, look: this.look.value };
    if (when === "now") this.rehearser.askNow(question);
    else this.rehearser.ask(question);
  }

  private failed(fault: Fault): void {
    if (!isGone(fault)) {
      this.rehearsalFault.value = fault.text;
      return;
    }
    this.gone.value = true;
    this.retrier.ask(null);
  }

  private wasSaved(id: string, text: string, version: string): void {
    dropDraft(this.shelf, this.boardId.value ?? "");
    this.boardId.value = id;
    this.version = version;
    this.kept = text;
    this.conflict.value = null;
    this.gone.value = false;
    if (this.text.value !== text) this.write(this.text.value);
  }

  private async lookBack(id: string, opened: number): Promise<void> {
    const last = await this.program.boardLast(id);
    if (opened === this.opened && last.ok) this.lastTime.value = last.value.last;
  }

  private async bothChanged(id: string): Promise<void> {
    const now = await this.program.board(id);
    if (now.ok) this.conflict.value = { theirs: now.value.text, theirVersion: now.value.version };
    else this.saveFault.value = now.fault.text;
  }
}
