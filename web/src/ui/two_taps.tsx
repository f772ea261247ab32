import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

/** An act that takes two taps: the first is easily a slip. `why` is said between them. */
export function TwoTaps(props: {
  readonly first: string;
  readonly label?: string;
  readonly sure: string;
  readonly not?: string;
  readonly why?: ComponentChildren;
  readonly kind?: string;
  readonly act: () => void;
}) {
  const [asked, setAsked] = useState(false);
  const yes = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asked) yes.current?.focus();
  }, [asked]);
  if (!asked)
    return (
      <button
        type="button"
        class={props.kind}
        aria-label={props.label}
        onClick={() => {
          setAsked(true);
        }}
      >
        {props.first}
      </button>
    );
  return (
    <div class="two-taps" role="group" aria-label={props.label ?? props.first}>
      {props.why}
      <div class="row">
        <button
          ref={yes}
          type="button"
          class={props.kind}
          onClick={() => {
            setAsked(false);
            props.act();
          }}
        >
          {props.sure}
        </button>
        <button
          type="button"
          class={props.kind}
          onClick={() => {
            setAsked(false);
          }}
        >
          {props.not ?? "No"}
        </button>
      </div>
    </div>
  );
}
