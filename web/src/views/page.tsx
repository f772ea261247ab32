import { useEffect } from "preact/hooks";
import type { ComponentChild } from "preact";
import type { Me } from "../model/account.ts";
import { route, type Route } from "../state/route.ts";
import { begin, me, meFault } from "../state/session.ts";
import { Said } from "../ui/said.tsx";
import { ArrivalsView } from "./arrivals/arrivals_view.tsx";
import { AccountsView } from "./accounts/accounts_view.tsx";
import { ClassPlanView, NewClassView } from "./class_plan/class_plan_view.tsx";
import { HallView } from "./hall/hall_view.tsx";
import { HouseView } from "./house/house_view.tsx";
import { NextClass } from "./next_class/next_class.tsx";
import { BoardView } from "./board/board_view.tsx";
import { WallView } from "./board/wall_view.tsx";
import { OwnPage } from "./own/own_page.tsx";
import { ResultsView } from "./results/results_view.tsx";
import { ScreenView } from "./screen/screen_view.tsx";
import { RunnersView } from "./runners/runners_view.tsx";
import { ScoresView } from "./scores/scores_view.tsx";
import { NewPersonView, PersonView } from "./people/person_view.tsx";
import { ClockRemote } from "./clock/clock_remote.tsx";
import { ClockWall, NextClassClock } from "./clock/clock_wall.tsx";
import { PeopleView } from "./people/people_view.tsx";
import { TrailView } from "./trail/trail_view.tsx";
import { Shell } from "./shell.tsx";
import { SignIn } from "./sign_in.tsx";
import { sentence } from "../ui/words.ts";
import "../ui/base.css";
import "./shell.css";

const nowhere = (
  <Said weight="warning">
    There is nothing for you at this address. <a href="/">To the first page</a>
  </Said>
);

function coachView(at: Route, who: Me): ComponentChild {
  switch (at.view) {
    case "next-class":
      return <NextClass id={at.id} who={who} />;
    case "new-class":
      return <NewClassView />;
    case "class-plan":
      return <ClassPlanView key={at.id} id={at.id ?? ""} />;
    case "board":
      return <BoardView id={at.id} />;
    case "wall":
      return <WallView id={at.id ?? ""} />;
    case "clock":
      return at.id === null ? <NextClassClock /> : <ClockWall key={at.id} id={at.id} acts />;
    case "remote":
      return <ClockRemote key={at.id} id={at.id ?? ""} />;
    case "people":
      if (at.id === null) return <PeopleView />;
      return at.id === "new" ? <NewPersonView /> : <PersonView key={at.id} id={at.id} />;
    case "hall":
      return <HallView />;
    case "house":
      return <HouseView />;
    case "trail":
      return who.role === "owner" ? <TrailView /> : nowhere;
    case "accounts":
      return <AccountsView who={who} />;
    case "nowhere":
      return nowhere;
    default:
      return floorView(at, who);
  }
}

/** The views of one class that a relief coach has, too. */
function floorView(at: Route, who: Me): ComponentChild {
  const id = at.id ?? "";
  switch (at.view) {
    case "arrivals":
      return <ArrivalsView key={id} id={id} />;
    case "runners":
      return <RunnersView key={id} id={id} />;
    case "scores":
      return <ScoresView key={id} id={id} who={who} />;
    case "results":
      return <ResultsView key={id} id={id} />;
    default:
      return nowhere;
  }
}

/** What each role may look at: a screen the wall, a person their own page, a relief coach the class they take. */
function view(at: Route, who: Me): ComponentChild {
  if (who.role === "screen") return <ScreenView at={at} />;
  if (who.role === "person") {
    if (at.view === "clock" && at.id !== null) return <ClockWall key={at.id} id={at.id} acts={false} />;
    return who.person === null ? nowhere : <OwnPage id={who.person} />;
  }
  if (who.role === "relief") {
    if (at.view === "next-class") return <NextClass id={who.class} who={who} />;
    if (at.view === "clock" || at.view === "remote") return coachView(at, who);
    return at.id === who.class ? floorView(at, who) : nowhere;
  }
  return coachView(at, who);
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
          {sentence(meFault.value.text)}
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
