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
  readonly disabled?: boolean;
  readonly act: () => void;
}) {
  const [asked, setAsked] = useState(false);
  const no = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (asked) no.current?.focus(); // a key that is held must not go on to the act
  }, [asked]);
  if (!asked)
    return (
      <button
        type="button"
        class={props.kind}
        aria-label={props.label}
        disabled={props.disabled ?? false}
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
          type="button"
          class={props.kind}
          disabled={props.disabled ?? false}
          onClick={() => {
            setAsked(false);
            props.act();
          }}
        >
          {props.sure}
        </button>
        <button
          ref={no}
          type="button"
          class={props.kind?.replace("first ", "")}
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
