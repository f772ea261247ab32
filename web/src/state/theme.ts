import { effect, signal } from "@preact/signals";

export type Theme = "light" | "dark";
const key = "repwright.theme";

/** What the reader chose; null is as the device has it. */
export const chosenTheme = signal<Theme | null>(null);
const deviceTheme = signal<Theme>("light");

export const themeNow = (): Theme => chosenTheme.value ?? deviceTheme.value;

export function choose(theme: Theme | null): void {
  chosenTheme.value = theme;
  if (theme) localStorage.setItem(key, theme);
  else localStorage.removeItem(key);
}

/** Keeps the document in the theme that holds, from now on. */
export function followTheme(): void {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const look = () => {
    deviceTheme.value = dark.matches ? "dark" : "light";
  };
  dark.addEventListener("change", look);
  look();
  const kept = localStorage.getItem(key);
  chosenTheme.value = kept === "light" || kept === "dark" ? kept : null;
  effect(() => {
    document.documentElement.dataset["theme"] = themeNow();
  });
}
