import { signal } from "@preact/signals";

/** Where the reader is: a view and, in some, the id of what it shows. */
export interface Route {
  readonly view:
    | "next-class"
    | "new-class"
    | "class-plan"
    | "board"
    | "wall"
    | "clock"
    | "remote"
    | "people"
    | "hall"
    | "house"
    | "accounts"
    | "trail"
    | "arrivals"
    | "runners"
    | "scores"
    | "results"
    | "nowhere";
  readonly id: string | null;
}

const addresses: readonly (readonly [RegExp, Route["view"]])[] = [
  [/^\/$/, "next-class"],
  [/^\/class\/([^/]+)$/, "next-class"],
  [/^\/classes\/new$/, "new-class"],
  [/^\/classes\/([^/]+)$/, "class-plan"],
  [/^\/board(?:\/([^/]+))?$/, "board"],
  [/^\/wall\/([^/]+)$/, "wall"],
  [/^\/clock(?:\/([^/]+))?$/, "clock"],
  [/^\/clock\/([^/]+)\/remote$/, "remote"],
  [/^\/people(?:\/([^/]+))?$/, "people"],
  [/^\/hall$/, "hall"],
  [/^\/house$/, "house"],
  [/^\/accounts$/, "accounts"],
  [/^\/trail$/, "trail"],
  [/^\/arrivals\/([^/]+)$/, "arrivals"],
  [/^\/runners\/([^/]+)$/, "runners"],
  [/^\/scores\/([^/]+)$/, "scores"],
  [/^\/results\/([^/]+)$/, "results"],
];

/** The route of an address. */
export function routeOf(path: string): Route {
  for (const [pattern, view] of addresses) {
    const met = pattern.exec(path);
    if (met) return { view, id: met[1] ? decodeURIComponent(met[1]) : null };
  }
  return { view: "nowhere", id: null };
}

export const route = signal<Route>({ view: "next-class", id: null });

/** Goes to an address of the page; `back` in the browser returns. */
export function goTo(path: string): void {
  history.pushState(null, "", path);
  route.value = routeOf(location.pathname);
  scrollTo(0, 0);
}

/** Follows the browser's address, and links within the page without loading it again. */
export function followAddress(): void {
  route.value = routeOf(location.pathname);
  addEventListener("popstate", () => {
    route.value = routeOf(location.pathname);
  });
  document.addEventListener("click", (click) => {
    if (click.defaultPrevented || click.button !== 0 || click.ctrlKey || click.metaKey || click.shiftKey) return;
    const link = click.target instanceof Element ? click.target.closest("a") : null;
    const path = link?.getAttribute("href");
    if (!link || !path?.startsWith("/") || link.target || link.hasAttribute("download")) return;
    click.preventDefault();
    goTo(path);
  });
}
