import type { Moment } from "../../model/clock.ts";

/** A shape for each state, so that colour is never the only sign. */
const paths: Readonly<Record<string, string>> = {
  work: "M2 13 8 2l6 11Z",
  tail: "M2 13 8 2l6 11Z",
  rest: "M2 8a6 6 0 0 1 12 0Zm0 3h12v2H2Z",
  change: "M1 6h10V2l4 6-4 6v-4H1Z",
  "count-in": "M8 1a7 7 0 1 1 0 14A7 7 0 0 1 8 1Zm0 3a4 4 0 1 0 0 8 4 4 0 0 0 0-8Z",
  paused: "M3 2h4v12H3Zm6 0h4v12H9Z",
  part: "M2 3h12v2H2Zm0 4h12v2H2Zm0 4h8v2H2Z",
  ready: "M8 1a7 7 0 1 1 0 14A7 7 0 0 1 8 1Zm0 2a5 5 0 1 0 0 10A5 5 0 0 0 8 3Z",
  over: "m2 8.5 2-2 2.5 2.5L13 2.5l2 2L6.5 13Z",
};

export function StateSign({ moment }: { readonly moment: Moment }) {
  const look = moment.state === "running" && moment.cue ? moment.cue.kind : moment.state;
  return (
    <svg class="state-sign" viewBox="0 0 16 16" aria-hidden="true">
      <path d={paths[look] ?? ""} fill-rule="evenodd" />
    </svg>
  );
}
