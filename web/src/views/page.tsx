import { useEffect } from "preact/hooks";
import type { ComponentChild } from "preact";
import type { Me } from "../model/account.ts";
import { route, type Route } from "../state/route.ts";
import { begin, me, meFault } from "../state/session.ts";
import { Said } from "../ui/said.tsx";
import { BoardView } from "./board/board_view.tsx";
import { Shell } from "./shell.tsx";
import { SignIn } from "./sign_in.tsx";
import "../ui/base.css";
import "./shell.css";

function view(at: Route, _who: Me): ComponentChild {
  switch (at.view) {
    case "board":
      return <BoardView id={at.id} />;
    default:
      return (
        <Said weight="warning">
          There is nothing at this address. <a href="/">To the next class</a>
        </Said>
      );
  }
}

/** Moves the reader to the top of a view that was just opened: a screen reader then reads its title. */
function useFocusOnView(at: Route): void {
  useEffect(() => {
    document.getElementById("main")?.focus({ preventScroll: true });
  }, [at.view, at.id]);
}

/** The whole page: the way in, or the view that the address names. */
export function Page() {
  const who = me.value;
  const at = route.value;
  useFocusOnView(at);
  if (meFault.value)
    return (
      <main id="main" class="narrow stack">
        <Said weight="problem" alert>
          {meFault.value.text}.
        </Said>
        <button type="button" onClick={() => void begin()}>
          Try again
        </button>
      </main>
    );
  if (who === null) return <main id="main" class="narrow soft">Looking…</main>;
  if (who.role === null) return <SignIn />;
  return (
    <Shell key={who.name} who={who}>
      {view(at, who)}
    </Shell>
  );
}
