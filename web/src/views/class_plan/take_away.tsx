import { useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { KeptClass } from "../../model/gym.ts";
import { removeClass } from "../../state/classes.ts";
import { goTo } from "../../state/route.ts";
import { Said } from "../../ui/said.tsx";
import { TwoTaps } from "../../ui/two_taps.tsx";
import { sentence } from "../../ui/words.ts";

/** Takes a class away that was made by mistake or does not take place; the program keeps one that has scores. */
export function TakeAway({ kept }: { readonly kept: KeptClass }) {
  const [fault, setFault] = useState<Fault | null>(null);
  const take = async () => {
    const failed = await removeClass(kept);
    setFault(failed);
    if (failed === null) goTo("/");
  };
  return (
    <div>
      <TwoTaps
        first="Take this class away…"
        sure="Yes, take it away"
        not="No, it stays"
        why={<p>It is gone for everybody, with who is booked and who was ticked. The board stays.</p>}
        act={() => void take()}
      />
      {fault ? (
        <Said weight="problem" alert>
          Not taken away. {sentence(fault.text)}
        </Said>
      ) : null}
    </div>
  );
}
