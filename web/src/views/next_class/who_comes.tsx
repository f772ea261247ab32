import type { Brief, Comer } from "../../model/brief.ts";
import { listWords } from "../../ui/words.ts";
import { classWords, sortComers, standingWords } from "./standing.ts";

function Told({ comer, day, link }: { readonly comer: Comer; readonly day: string | null; readonly link: boolean }) {
  const standing = standingWords(comer, day);
  const late = comer.late_s > 0 ? `${Math.round(comer.late_s / 60)} min late` : null;
  const unknown = comer.marks === 0 ? "no marks yet" : null;
  const tags = [standing, late, unknown].filter((tag) => tag !== null);
  return (
    <li>
      <span class="who">
        {link ? <a href={`/people/${comer.id}`}>{comer.name}</a> : <strong>{comer.name}</strong>}
        {tags.map((tag) => (
          <span key={tag} class="tag">
            {tag}
          </span>
        ))}
      </span>
      {comer.actions.map((action) => (
        <span key={action} class="action">
          {action}
        </span>
      ))}
    </li>
  );
}

/** Who comes: those of whom the coach should know something first, then the others by name. */
export function WhoComes(props: { readonly brief: Brief; readonly day: string | null; readonly links: boolean }) {
  const { told, others } = sortComers(props.brief.people);
  return (
    <section class="sheet" aria-labelledby="who-comes">
      <h2 id="who-comes">Who comes</h2>
      <p class="soft">{classWords(props.brief.people)}.</p>
      <ul class="plain comers">
        {told.map((comer) => (
          <Told key={comer.id} comer={comer} day={props.day} link={props.links} />
        ))}
      </ul>
      {others.length > 0 ? (
        <p class="others">
          {told.length > 0 ? "Also: " : ""}
          {listWords(others.map((each) => each.name))}.
        </p>
      ) : null}
    </section>
  );
}
