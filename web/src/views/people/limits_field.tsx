import type { LimitKind } from "../../model/catalogue.ts";
import type { Limit } from "../../model/people_change.ts";
import { limitKinds } from "../../state/gym.ts";
import { Field } from "../../ui/field.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";

function LimitRow(props: {
  readonly limit: Limit;
  readonly kinds: readonly LimitKind[];
  readonly change: (limit: Limit | null) => void;
  readonly number: number;
}) {
  const { limit, change } = props;
  const id = `limit-${props.number}`;
  return (
    <div class="limit-row">
      <div class="field">
        <label for={id}>Avoids</label>
        <select
          id={id}
          value={limit.id}
          onChange={(event) => {
            change({ ...limit, id: event.currentTarget.value });
          }}
        >
          <option value="">choose</option>
          {props.kinds.map((kind) => (
            <option key={kind.id} value={kind.id}>
              {kind.name}
            </option>
          ))}
        </select>
      </div>
      <Field
        label="What the floor sees, as an action"
        value={limit.action}
        change={(action) => {
          change({ ...limit, action });
        }}
      />
      <Field
        label="Until (may stay empty)"
        type="date"
        value={limit.until}
        change={(until) => {
          change({ ...limit, until });
        }}
      />
      <button
        type="button"
        onClick={() => {
          change(null);
        }}
      >
        Take out<span class="unseen"> limit {props.number}</span>
      </button>
    </div>
  );
}

/** What somebody avoids for now, each with the words that the floor sees. There is no field for a reason. */
export function LimitsField(props: {
  readonly limits: readonly Limit[];
  readonly change: (limits: readonly Limit[]) => void;
  readonly wrong: string | null;
}) {
  const { limits, change } = props;
  const set = (index: number, limit: Limit | null) => {
    change(limits.flatMap((each, at) => (at === index ? (limit ? [limit] : []) : [each])));
  };
  return (
    <fieldset class="plain-set stack">
      <legend>Limits</legend>
      <p class="small soft">
        An action and no reason: 'no overhead today, floor press'. What lies behind it belongs to the person and to
        licensed professionals.
      </p>
      {props.wrong ? <p class="wrong">{props.wrong}</p> : null}
      <LookedAt
        at={limitKinds}
        show={(kinds) => (
          <>
            {limits.map((limit, index) => (
              <LimitRow
                key={index}
                number={index + 1}
                limit={limit}
                kinds={kinds}
                change={(changed) => {
                  set(index, changed);
                }}
              />
            ))}
          </>
        )}
      />
      <div>
        <button
          type="button"
          onClick={() => {
            change([...limits, { id: "", until: "", action: "" }]);
          }}
        >
          Add a limit
        </button>
      </div>
    </fieldset>
  );
}
