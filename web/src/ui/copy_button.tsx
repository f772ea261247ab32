import { useState } from "preact/hooks";

/** Copies by way of a selection: over plain http a browser has no clipboard for pages. */
function copySelected(text: string): boolean {
  const area = document.createElement("textarea");
  area.value = text;
  area.readOnly = true;
  area.className = "unseen";
  document.body.append(area);
  area.select();
  const copied = document.execCommand("copy");
  area.remove();
  return copied;
}

async function copy(text: string): Promise<boolean> {
  // Browsers leave `clipboard` out where the types promise it.
  const clipboard = (navigator as Partial<Pick<Navigator, "clipboard">>).clipboard;
  try {
    await clipboard?.writeText(text);
    return clipboard !== undefined || copySelected(text);
  } catch {
    return copySelected(text);
  }
}

/** Puts a text on the clipboard and says whether that worked. */
export function CopyButton({ text, words }: { readonly text: string; readonly words: string }) {
  const [told, setTold] = useState("");
  return (
    <span class="row">
      <button
        type="button"
        onClick={(event) => {
          const button = event.currentTarget;
          void copy(text).then((copied) => {
            setTold(copied ? "Copied." : "This browser does not copy: select it and press Ctrl+C.");
            button.focus();
          });
        }}
      >
        {words}
      </button>
      <span role="status" class="small soft">
        {told}
      </span>
    </span>
  );
}
