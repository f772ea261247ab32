/** Where drafts are kept: the part of the browser's Storage that is used, so that tests bring their own. */
export interface DraftShelf {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** A text that has not been saved, and the saved one that it was made from. */
export interface Draft {
  readonly text: string;
  /** The version it was made from; null for a board that has never been saved. */
  readonly version: string | null;
}

/** A board as the program keeps it. */
export interface KeptBoard {
  readonly text: string;
  readonly version: string | null;
}

const keyOf = (boardId: string): string => `repwright.draft.${boardId}`;

function isDraft(value: unknown): value is Draft {
  if (typeof value !== "object" || value === null) return false;
  const { text, version } = value as Record<string, unknown>;
  return typeof text === "string" && (version === null || typeof version === "string");
}

/** Keeps the draft; false if the browser refuses (its room is full, or it keeps nothing). */
export function keepDraft(shelf: DraftShelf, boardId: string, draft: Draft): boolean {
  try {
    shelf.setItem(keyOf(boardId), JSON.stringify({ text: draft.text, version: draft.version }));
    return true;
  } catch {
    return false;
  }
}

/** The draft of a board; null if there is none that can be read. */
export function takeDraft(shelf: DraftShelf, boardId: string): Draft | null {
  try {
    const kept: unknown = JSON.parse(shelf.getItem(keyOf(boardId)) ?? "null");
    return isDraft(kept) ? kept : null;
  } catch {
    return null;
  }
}

export function dropDraft(shelf: DraftShelf, boardId: string): void {
  try {
    shelf.removeItem(keyOf(boardId));
  } catch {
    // A browser that keeps nothing has nothing to drop.
  }
}

/** What to show when a board is opened. */
export type Opening =
  | { readonly kind: "kept"; readonly text: string; readonly version: string | null }
  | { readonly kind: "draft"; readonly text: string; readonly version: string | null }
  | {
      readonly kind: "both-changed";
      readonly text: string;
      readonly version: string | null;
      readonly theirs: string;
      readonly theirVersion: string | null;
    };

/**
 * The kept text if there is no draft or the draft says the same; the draft if the kept text is still the one it was
 * made from; else both, so that neither is lost.
 */
export function opening(kept: KeptBoard, draft: Draft | null): Opening {
  if (!draft || draft.text === kept.text) return { kind: "kept", text: kept.text, version: kept.version };
  if (draft.version === kept.version) return { kind: "draft", text: draft.text, version: draft.version };
  return {
    kind: "both-changed",
    text: draft.text,
    version: draft.version,
    theirs: kept.text,
    theirVersion: kept.version,
  };
}

/** An id for a new board from its words: small letters, figures and hyphens; `board` if nothing is left. */
export function idFromWords(words: string): string {
  const id = words
    .normalize("NFD")
    .toLowerCase()
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .replace(/-+$/, "");
  return id || "board";
}
