import { useEffect, useState } from "preact/hooks";
import type { Account, Me } from "../../model/account.ts";
import type { Fault } from "../../model/fault.ts";
import { accounts, classes, people } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { Choice } from "../../ui/choice.tsx";
import { CopyButton } from "../../ui/copy_button.tsx";
import { Field } from "../../ui/field.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Qr } from "../../ui/qr.tsx";
import { Said } from "../../ui/said.tsx";
import { TwoTaps } from "../../ui/two_taps.tsx";
import { sentence, shortDay } from "../../ui/words.ts";

const roleWords: Readonly<Record<Account["role"], string>> = {
  owner: "owner",
  coach: "coach",
  relief: "relief coach",
  person: "person",
  screen: "screen on the wall",
};

/** What the address of a link begins with, by who opens it. */
const linkKinds: Partial<Readonly<Record<Account["role"], string>>> = { person: "person", relief: "class", screen: "screen" };

/** Who it is that signs in: a person by their own name, others by what they sign in with. */
function nameOf(account: Account): string {
  const rows = people.now.value.value?.rows ?? [];
  return rows.find((row) => account.person !== null && row["id"] === account.person)?.["name"] ?? account.name;
}

function seesWords(account: Account): string {
  if (account.person !== null) return "their own page";
  if (account.role === "screen") return "board, clock and results of the next class";
  if (account.class === null) return account.role === "owner" ? "everything, and this page" : "everything";
  const row = (classes.now.value.value ?? []).find((each) => each.id === account.class);
  return row?.date ? `the class of ${shortDay(row.date)}${row.start ? `, ${row.start}` : ""}` : account.class;
}

/** Takes somebody's way in away. */
function TakeAway({ account }: { readonly account: Account }) {
  const [fault, setFault] = useState<Fault | null>(null);
  const take = async () => {
    const answer = await program.removeAccount(account.name);
    setFault(answer.ok ? null : answer.fault);
    if (answer.ok) void accounts.lookAgain();
  };
  if (fault) return <Said weight="problem">{sentence(fault.text)}</Said>;
  return (
    <TwoTaps first="Take away…" label={`Take away: ${nameOf(account)}`} sure="Yes, take away" act={() => void take()} />
  );
}

function AccountList({ list, own }: { readonly list: readonly Account[]; readonly own: string }) {
  return (
    <section class="sheet" aria-labelledby="known">
      <h2 id="known">May sign in</h2>
      {list.length === 0 ? <p class="soft">No screen yet.</p> : null}
      <table class="accounts" hidden={list.length === 0}>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">As</th>
            <th scope="col">Sees</th>
            <th scope="col">
              <span class="unseen">Take away</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {list.map((each) => (
            <tr key={each.name}>
              <th scope="row">{nameOf(each)}</th>
              <td>{roleWords[each.role]}</td>
              <td>{seesWords(each)}</td>
              <td>{each.name === own ? null : <TakeAway account={each} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Whom(props: { readonly role: string; readonly value: string; readonly change: (id: string) => void }) {
  if (props.role === "relief")
    return (
      <LookedAt
        at={classes}
        show={(rows) => (
          <Choice
            label="Class"
            value={props.value}
            choices={[["", "choose"], ...rows.map((row) => [row.id, `${row.date ? shortDay(row.date) : row.id} ${row.start ?? ""}`] as const)]}
            change={props.change}
          />
        )}
      />
    );
  if (props.role === "person")
    return (
      <LookedAt
        at={people}
        show={(table) => (
          <Choice
            label="Person"
            value={props.value}
            choices={[["", "choose"], ...table.rows.map((row) => [row["id"] ?? "", row["name"] ?? ""] as const)]}
            change={props.change}
          />
        )}
      />
    );
  return null;
}

const screen = ["screen", "screen on the wall"] as const;
const roles = [
  ["coach", "coach"],
  ["relief", "relief coach, for one class"],
  ["person", "person, their own page"],
  screen,
] as const;

/** What each signs in with besides a name. */
const secrets = { coach: "password", person: "pin", relief: null, screen: null } as const;
const nameLabels = { coach: "Name to sign in with", relief: "Their name", screen: "What you call it", person: "" } as const;

function Secret(props: { readonly kind: "password" | "pin"; readonly value: string; readonly change: (value: string) => void }) {
  const isPin = props.kind === "pin";
  return (
    <Field
      label={isPin ? "PIN" : "Password"}
      type="password"
      value={props.value}
      change={props.change}
      needed
      complete="new-password"
      numeric={isPin}
      hint={isPin ? "4 to 8 digits; tell it them, it is not shown again" : "At least 10 characters"}
    />
  );
}

/** A coach lets in screens alone. */
function NewAccount({ isOwner, made }: { readonly isOwner: boolean; readonly made: (account: Account) => void }) {
  const [role, setRole] = useState<keyof typeof secrets>(isOwner ? "coach" : "screen");
  const [name, setName] = useState("");
  const [whom, setWhom] = useState("");
  const [secret, setSecret] = useState("");
  const [fault, setFault] = useState<Fault | null>(null);
  const isPerson = role === "person";
  const kind = secrets[role];
  const send = async () => {
    const answer = await program.keepAccount({
      name: isPerson ? whom : name,
      role,
      ...(isPerson ? { person: whom } : {}),
      ...(kind === null ? {} : { [kind]: secret }),
      ...(role === "relief" ? { class: whom } : {}),
    });
    setFault(answer.ok ? null : answer.fault);
    if (!answer.ok) return;
    setSecret("");
    setName("");
    void accounts.lookAgain();
    made(answer.value);
  };
  return (
    <form
      class="sheet stack"
      aria-labelledby="new"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <h2 id="new">Let somebody in</h2>
      {fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      <Choice
        label="As"
        value={role}
        choices={isOwner ? roles : [screen]}
        change={(chosen) => {
          setRole(chosen as keyof typeof secrets);
          setWhom("");
        }}
      />
      <Whom role={role} value={whom} change={setWhom} />
      {isPerson ? null : <Field label={nameLabels[role]} value={name} change={setName} needed />}
      {kind === null ? (
        <p class="soft">A link is all they need; it is shown once. {role === "relief" ? "It opens nothing any more when the class is over." : "It opens the board, the clock and the results, and nothing can be changed there."}</p>
      ) : (
        <Secret kind={kind} value={secret} change={setSecret} />
      )}
      <button class="first">{kind === null ? "Make the link" : "Let in"}</button>
    </form>
  );
}

/** Whether no other device reaches the page by that name. */
const isOnThisMachine = (host: string): boolean => host === "localhost" || host === "[::1]" || host.startsWith("127.");

function LinkMade({ account }: { readonly account: Account }) {
  if (account.link === null) return <Said weight="fine">{nameOf(account)} may sign in now.</Said>;
  const link = `${location.origin}/#${linkKinds[account.role] ?? "person"}=${account.link}`;
  return (
    <Said weight="fine" alert>
      <p>
        This is the link of {nameOf(account)}, shown this once. {account.role === "person" ? "With the PIN it" : "It"} opens{" "}
        {seesWords(account)} and nothing else.
      </p>
      <div class="own-way">
        <Qr text={link} label={`The link of ${nameOf(account)} as a QR code`} />
        <div class="stack">
          <p>
            <code class="own-link">{link}</code>
          </p>
          <CopyButton text={link} words="Copy the link" />
          {isOnThisMachine(location.hostname) ? (
            <p class="small">
              The link leads to this machine alone. For a phone, open the page by the machine's address in the gym's network
              first.
            </p>
          ) : null}
        </div>
      </div>
    </Said>
  );
}

/** Who may sign in: for the owner everybody, for a coach the screens. */
export function AccountsView({ who }: { readonly who: Me }) {
  const isOwner = who.role === "owner";
  const [made, setMade] = useState<Account | null>(null);
  useEffect(() => {
    people.want();
    classes.want();
  }, []);
  return (
    <div class="stack">
      <div class="class-head">
        <h1>{isOwner ? "Who signs in" : "Screens"}</h1>
        {isOwner ? (
          <a class="button" href="/trail">
            The trail: who changed what
          </a>
        ) : null}
      </div>
      {made ? <LinkMade account={made} /> : null}
      <div class="columns">
        <LookedAt at={accounts} show={(list) => <AccountList list={list} own={who.name} />} />
        <NewAccount isOwner={isOwner} made={setMade} />
      </div>
    </div>
  );
}
