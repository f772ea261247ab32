import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import "./wide.css";

/** Something wider than the page, to be slid sideways: while there is more on the right, that is said and one tap away. */
export function Wide(props: { readonly label: string; readonly more: string; readonly kind?: string; readonly children: ComponentChildren }) {
  const box = useRef<HTMLDivElement>(null);
  const [hidden, setHidden] = useState(false);
  useLayoutEffect(() => {
    const slid = box.current;
    if (!slid) return;
    const look = () => {
      setHidden(slid.scrollLeft + slid.clientWidth < slid.scrollWidth - 2);
    };
    look();
    const watch = new ResizeObserver(look);
    watch.observe(slid);
    slid.addEventListener("scroll", look);
    return () => {
      watch.disconnect();
      slid.removeEventListener("scroll", look);
    };
  }, []);
  return (
    <div class={hidden ? "slides more-right" : "slides"}>
      <button
        type="button"
        class="slide-on small"
        hidden={!hidden}
        onClick={() => {
          const slid = box.current;
          slid?.scrollBy({ left: slid.clientWidth / 2 });
        }}
      >
        {props.more} <span aria-hidden="true">→</span>
      </button>
      <div ref={box} class={`wide ${props.kind ?? ""}`} role="region" aria-label={props.label} tabIndex={0}>
        {props.children}
      </div>
    </div>
  );
}
