import { Fragment } from "preact";

/** What may help against something, in the program's words: what stands in backticks is chalk. */
export function MayHelp({ words }: { readonly words: string }) {
  return (
    <>
      May help:{" "}
      {words.split("`").map((part, index) => (
        <Fragment key={index}>{index % 2 === 1 ? <code>{part}</code> : part}</Fragment>
      ))}
      {words.endsWith("`") ? "" : "."}
    </>
  );
}
