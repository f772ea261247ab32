import { useEffect, useState } from "preact/hooks";

/** As wide as a phone: one hand holds it. */
export const phoneWidth = "46rem";

/** Whether the page is at most so wide, kept up to date. */
export function useNarrow(width: string): boolean {
  const query = `(max-width: ${width})`;
  const [narrow, setNarrow] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const watched = matchMedia(query);
    const look = () => {
      setNarrow(watched.matches);
    };
    look();
    watched.addEventListener("change", look);
    return () => {
      watched.removeEventListener("change", look);
    };
  }, [query]);
  return narrow;
}
