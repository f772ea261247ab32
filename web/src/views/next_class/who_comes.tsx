import { Fragment } from "preact";
import type { Brief, Comer } from "../../model/brief.ts";
import { listWords } from "../../ui/words.ts";
import { classWords, gatherAlike, sortComers, tagsOf, type Alike } from "./standing.ts";

function Name({ comer, link }: { readonly comer: Comer; readonly link: boolean }) {
  return link ? <a href={`/people/${comer.id}`}>{comer.name}</a> : <strong>{comer.name}</strong>;
}

function Told({ comer, day, link }: { readonly comer: Comer; readonly day: string | null; readonly link: boolean }) {
  return (
    <li>
      <span class="who">
        <Name comer={comer} link={link} />
        {tagsOf(comer, day).map((tag) => (
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

function Together({ alike, link }: { readonly alike: Alike; readonly link: boolean }) {
  return (
    <li>
      <span>
        <span class="tag">{alike.tag}</span>{" "}
        {alike.people.map((comer, index) => (
          <Fragment key={comer.id}>
            {index > 0 ? ", " : ""}
            <Name comer={comer} link={link} />
          </Fragment>
        ))}
      </span>
    </li>
  );
}

/** Who comes: those of whom the coach should know something first, then the others by name. */
export function WhoComes(props: { readonly brief: Brief; readonly day: string | null; readonly links: boolean }) {
  const { told, others } = sortComers(props.brief.people);
  const { single, alike } = gatherAlike(told, props.day);
  return (
    <section class="sheet" aria-labelledby="who-comes">
      <h2 id="who-comes">Who comes</h2>
      <p class="soft">{classWords(props.brief.people)}.</p>
      <ul class="plain comers">
        {single.map((comer) => (
          <Told key={comer.id} comer={comer} day={props.day} link={props.links} />
        ))}
        {alike.map((each) => (
          <Together key={each.tag} alike={each} link={props.links} />
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
