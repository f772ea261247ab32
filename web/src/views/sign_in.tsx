import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Fault } from "../model/fault.ts";
import { becomeOwner, me, signIn, signInByLink, ticket } from "../state/session.ts";
import { Field } from "../ui/field.tsx";
import { Said } from "../ui/said.tsx";
import { sentence } from "../ui/words.ts";

function SignInForm(props: {
  readonly title: string;
  readonly act: string;
  readonly send: () => Promise<Fault | null>;
  readonly children: JSX.Element | readonly JSX.Element[];
}) {
  const [fault, setFault] = useState<Fault | null>(null);
  const [busy, setBusy] = useState(false);
  const send = async () => {
    setBusy(true);
    setFault(await props.send());
    setBusy(false);
  };
  return (
    <main id="main" class="narrow">
      <form
        class="sheet stack"
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <h1>{props.title}</h1>
        {fault ? (
          <Said weight="problem" alert>
            {sentence(fault.text)}
          </Said>
        ) : null}
        {props.children}
        <button class="first" disabled={busy}>
          {props.act}
        </button>
      </form>
    </main>
  );
}

function FirstStart({ token }: { readonly token: string }) {
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  return (
    <SignInForm title="You are the owner" act="Open the gym" send={() => becomeOwner(token, name, password)}>
      <p>
        This link makes you the owner, once. With a password you can sign in later; without one, every start of the
        program prints a new link.
      </p>
      <Field label="Your name" value={name} change={setName} needed complete="username" />
      <Field
        label="Password (may stay empty)"
        type="password"
        value={password}
        change={setPassword}
        complete="new-password"
        hint="At least 10 characters"
      />
    </SignInForm>
  );
}

function OwnerAgain({ token }: { readonly token: string }) {
  return (
    <SignInForm title="Welcome back" act="Open the gym" send={() => becomeOwner(token, "", "")}>
      <p>This link signs the owner in, once.</p>
    </SignInForm>
  );
}

function ByLink({ link }: { readonly link: string }) {
  const [pin, setPin] = useState("");
  return (
    <SignInForm title="Your own page" act="Open" send={() => signInByLink(link, pin)}>
      <Field label="PIN" type="password" numeric value={pin} change={setPin} needed hint="4 to 8 digits" />
    </SignInForm>
  );
}

function ByPassword() {
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  return (
    <SignInForm title="Sign in" act="Sign in" send={() => signIn(name, password)}>
      <Field label="Name" value={name} change={setName} needed complete="username" />
      <Field
        label="Password"
        type="password"
        value={password}
        change={setPassword}
        needed
        complete="current-password"
      />
      <p class="small soft">Members open their own link. The owner may use the link that the terminal printed.</p>
    </SignInForm>
  );
}

function NoOwnerYet() {
  return (
    <main id="main" class="narrow">
      <div class="sheet stack">
        <h1>No owner yet</h1>
        <p>
          Open the link that the program printed in its terminal when it started. It makes you the owner; there is no
          password to begin with.
        </p>
      </div>
    </main>
  );
}

/** The way in that fits: by the link that was opened, else by name and password. */
export function SignIn() {
  const at = ticket.value;
  const first = me.value?.first_start ?? false;
  if (at?.kind === "owner") return first ? <FirstStart token={at.token} /> : <OwnerAgain token={at.token} />;
  if (at?.kind === "person") return <ByLink link={at.token} />;
  return first ? <NoOwnerYet /> : <ByPassword />;
}
