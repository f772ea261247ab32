import { isCoach, type Me } from "../../model/account.ts";
import { classOf, gym } from "../../state/gym.ts";
import { Caution } from "../../ui/caution.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { ClassHead } from "./class_head.tsx";
import { ClassBody } from "./class_body.tsx";
import { NoClass } from "./no_class.tsx";
import "../floor/floor.css";
import "./next_class.css";

function NoBoard({ id, mayChoose }: { readonly id: string; readonly mayChoose: boolean }) {
  return (
    <Said weight="warning">
      This class has no board yet.
      {mayChoose ? (
        <>
          {" "}
          <a href={`/classes/${id}`}>Choose one</a> or <a href="/board">chalk one</a>.
        </>
      ) : null}
    </Said>
  );
}

function ClassPage({ id, who, isNext }: { readonly id: string; readonly who: Me; readonly isNext: boolean }) {
  return (
    <LookedAt
      at={classOf(id)}
      show={({ class: gymClass }) => (
        <div class="next-class stack">
          <ClassHead gymClass={gymClass} isNext={isNext} who={who} />
          {gymClass.board_id ? <ClassBody gymClass={gymClass} who={who} /> : <NoBoard id={id} mayChoose={isCoach(who)} />}
          <Caution />
        </div>
      )}
    />
  );
}

/** What opens at ten to six: the next class, or the class that the address names. */
export function NextClass({ id, who }: { readonly id: string | null; readonly who: Me }) {
  return (
    <LookedAt
      at={gym}
      show={({ next_class }) => {
        const shown = id ?? next_class;
        return shown === null ? (
          <NoClass mayMake={isCoach(who)} />
        ) : (
          <ClassPage key={shown} id={shown} who={who} isNext={shown === next_class} />
        );
      }}
    />
  );
}
