import { useLayoutEffect, useRef, useState } from "preact/hooks";

/** The width of an element in whole pixels, kept up to date; 0 before it is laid out. */
export function useWidth<E extends HTMLElement>() {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const measured = element.current;
    if (!measured) return;
    const measure = () => {
      setWidth(Math.floor(measured.getBoundingClientRect().width));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(measured);
    return () => {
      watch.disconnect();
    };
  }, []);
  return [element, width] as const;
}
