import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import type { Kept } from "../state/kept.ts";
import { Said } from "./said.tsx";
import { sentence } from "./words.ts";

/** Asks for something kept, and shows it once it is there; a fault is said, and can be tried again. */
export function LookedAt<T>(props: { readonly at: Kept<T>; readonly show: (value: T) => ComponentChildren }) {
  useEffect(() => {
    props.at.want();
  }, [props.at]);
  const { value, fault } = props.at.now.value;
  return (
    <>
      {fault ? (
        <Said weight="problem" alert>
          <p>{sentence(fault.text)}</p>
          <button type="button" onClick={() => void props.at.lookAgain()}>
            Try again
          </button>
        </Said>
      ) : null}
      {value === null ? (fault ? null : <p class="soft">Looking…</p>) : props.show(value)}
    </>
  );
}
