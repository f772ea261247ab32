import { refusals, waiting } from "../../model/outbox.ts";
import { sender } from "../../state/sender.ts";
import { Said } from "../../ui/said.tsx";
import { count, sentence } from "../../ui/words.ts";

/** How much of what was entered on this device the program does not have yet, and what it refused. */
export function Waiting() {
  const outbox = sender.outbox.value;
  const now = waiting(outbox).length;
  const refused = refusals(outbox);
  const gone = sender.failures.value > 0;
  return (
    <div class="waiting" role="status">
      {gone && now > 0 ? (
        <Said weight="warning">
          {count(now, "entry waits", "entries wait")} on this device: the program does not answer. They are sent by themselves
          when it is back, also after a reload.
        </Said>
      ) : null}
      {refused.map((each) => (
        <Said key={each.key} weight="problem">
          <p>
            {each.words} was not taken: {sentence(each.refused ?? "")}
          </p>
          <button
            type="button"
            onClick={() => {
              sender.takeBack(each.key);
            }}
          >
            Throw away
          </button>
        </Said>
      ))}
    </div>
  );
}
