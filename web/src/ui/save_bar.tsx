import type { ComponentChildren } from "preact";
import "./save_bar.css";

/** What stays in sight below a long form: what is to be said of it, and its acts. Without `save` it sends its form. */
export function SaveBar(props: {
  readonly label: string;
  readonly act?: string;
  readonly busy?: boolean;
  readonly save?: () => void;
  readonly leave: () => void;
  readonly leaveAct?: string;
  readonly children?: ComponentChildren;
}) {
  return (
    <div class="save-bar" role="region" aria-label={props.label}>
      {props.children}
      <div class="row">
        <button type={props.save ? "button" : "submit"} class="first" disabled={props.busy ?? false} onClick={props.save}>
          {props.act ?? "Save"}
        </button>
        <button type="button" onClick={props.leave}>
          {props.leaveAct ?? "Leave as it was"}
        </button>
      </div>
    </div>
  );
}
