import { useSignalEffect, type ReadonlySignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Movement } from "../model/gym.ts";
import type { BoardEditor } from "./board_editor.ts";
import type { ShownReading } from "./colours.ts";

interface BoardTextProps {
  /** The text to begin with; later ones go in through the editor itself. */
  readonly text: string;
  /** A signal, so that the editor shows a reading at once and not when all that hangs on it has been drawn. */
  readonly shown: ReadonlySignal<ShownReading | null>;
  readonly movements: readonly Movement[];
  readonly changed: (text: string) => void;
  readonly atLine: (line: number) => void;
  /** The editor once it is there, and null when it goes. */
  readonly made: (editor: BoardEditor | null) => void;
}

/** The board's text. The editor is fetched when a board is opened, so that the other views load without it. */
export function BoardText(props: BoardTextProps) {
  const host = useRef<HTMLDivElement>(null);
  const editor = useRef<BoardEditor | null>(null);
  const now = useRef(props);
  now.current = props;

  useEffect(() => {
    let gone = false;
    void import("./board_editor.ts").then(({ makeBoardEditor }) => {
      if (gone || !host.current) return;
      const made = makeBoardEditor(host.current, {
        text: now.current.text,
        label: "The board, as chalked",
        movements: () => now.current.movements,
        changed: (text) => {
          now.current.changed(text);
        },
        atLine: (line) => {
          now.current.atLine(line);
        },
      });
      editor.current = made;
      const read = now.current.shown.peek();
      if (read) made.show(read);
      now.current.made(made);
    });
    return () => {
      gone = true;
      editor.current?.destroy();
      editor.current = null;
      now.current.made(null);
    };
  }, []);

  useSignalEffect(() => {
    const read = props.shown.value;
    if (read) editor.current?.show(read);
  });

  return <div class="board-text" ref={host} />;
}
