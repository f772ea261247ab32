import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { isCoach, type Me } from "../model/account.ts";
import { gym } from "../state/gym.ts";
import { route, type Route } from "../state/route.ts";
import { signOut } from "../state/session.ts";
import { choose, themeNow } from "../state/theme.ts";
import { useNarrow } from "../ui/use_narrow.ts";

interface Tab {
  readonly view: Route["view"];
  readonly path: string;
  readonly words: string;
}

const next: Tab = { view: "next-class", path: "/", words: "Next class" };
const coachTabs: readonly Tab[] = [
  next,
  { view: "board", path: "/board", words: "Board" },
  { view: "people", path: "/people", words: "People" },
  { view: "hall", path: "/hall", words: "Hall" },
  { view: "house", path: "/house", words: "House" },
];

function tabsFor(role: Me["role"]): readonly Tab[] {
  if (role === "person" || role === "screen") return [];
  return role === "relief" ? [next] : coachTabs;
}

function Tabs({ role }: { readonly role: Me["role"] }) {
  const tabs = tabsFor(role);
  if (tabs.length < 2) return null;
  return (
    <nav class="views" aria-label="Views">
      {tabs.map((tab) => (
        <a key={tab.view} href={tab.path} aria-current={route.value.view === tab.view ? "page" : undefined}>
          {tab.words}
        </a>
      ))}
    </nav>
  );
}

export function ThemeSwitch() {
  const other = themeNow() === "dark" ? "light" : "dark";
  return (
    <button
      type="button"
      class="bare"
      onClick={() => {
        choose(other);
      }}
    >
      {other === "dark" ? "Dark" : "Light"}
    </button>
  );
}

function MyActs({ who }: { readonly who: Me }) {
  return (
    <div class="mine">
      {isCoach(who) ? (
        <a class="button" href="/accounts">
          {who.role === "owner" ? "Who signs in" : "Screens"}
        </a>
      ) : null}
      <ThemeSwitch />
      <button type="button" class="bare" onClick={() => void signOut()}>
        Sign out<span class="unseen"> {who.name}</span>
      </button>
    </div>
  );
}

/** What is seldom done: behind one word where it would take a row of its own. */
function Mine({ who }: { readonly who: Me }) {
  const folded = useNarrow("60rem");
  if (!folded) return <MyActs who={who} />;
  return (
    <details key={`${route.value.view} ${route.value.id ?? ""}`} class="mine-folded">
      <summary>More</summary>
      <MyActs who={who} />
    </details>
  );
}

/** What stands around every view: whose gym, where to, who is signed in. */
export function Shell({ who, children }: { readonly who: Me; readonly children: ComponentChildren }) {
  useEffect(() => {
    gym.want();
  }, []);
  const known = gym.now.value.value;
  return (
    <>
      <a class="skip button" href="#main">
        To the content
      </a>
      <header class="head">
        <span class="gym">{known?.name || "Repwright"}</span>
        <Tabs role={who.role} />
        <Mine who={who} />
      </header>
      {known?.invented ? <p class="invented">Invented data: this gym and everybody in it are made up.</p> : null}
      <main id="main" tabIndex={-1}>
        {children}
      </main>
    </>
  );
}
