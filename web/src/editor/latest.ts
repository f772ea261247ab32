/** Starts and stops the waits of `latest`; tests bring their own clock. */
export interface Waits {
  start(after: number, then: () => void): number;
  stop(wait: number): void;
}

const browserWaits: Waits = {
  start: (after, then) => globalThis.setTimeout(then, after) as unknown as number,
  stop: (wait) => {
    globalThis.clearTimeout(wait);
  },
};

export interface Latest<Question> {
  /** Asks after a pause without further questions; answers to earlier questions are dropped from now on. */
  ask(question: Question): void;
  /** Asks at once. */
  askNow(question: Question): void;
  /** Drops every answer that is still to come. */
  stop(): void;
}

interface Telling<Question, Answer> {
  readonly ask: (question: Question, signal: AbortSignal) => Promise<Answer>;
  readonly answered: (answer: Answer, question: Question) => void;
  /** Milliseconds without a further question before one is asked. */
  readonly pause: number;
  readonly waits?: Waits;
}

/**
 * Asks only what was asked last. An answer arrives at `answered` only while nothing newer has been asked; the request
 * of an older question is given up. `ask` tells its faults as answers.
 */
export function latest<Question, Answer>(telling: Telling<Question, Answer>): Latest<Question> {
  const waits = telling.waits ?? browserWaits;
  let wait: number | null = null;
  let asking: AbortController | null = null;

  const stop = (): void => {
    if (wait !== null) waits.stop(wait);
    wait = null;
    asking?.abort();
    asking = null;
  };
  const start = (question: Question): void => {
    const mine = new AbortController();
    asking = mine;
    void telling.ask(question, mine.signal).then((answer) => {
      if (asking === mine) telling.answered(answer, question);
    });
  };
  return {
    ask(question) {
      stop();
      wait = waits.start(telling.pause, () => {
        wait = null;
        start(question);
      });
    },
    askNow(question) {
      stop();
      start(question);
    },
    stop,
  };
}
