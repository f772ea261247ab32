import type { Fault } from "../model/fault.ts";
import type { KeptBoard } from "../model/gym.ts";
import { boardOf } from "./gym.ts";
import { program } from "./program.ts";

/** Keeps another text in place of the board's; null if it was done, else why not. */
export async function keepText(board: KeptBoard, text: string): Promise<Fault | null> {
  const answer = await program.keepBoard(board.id, text, board.version);
  if (answer.ok) await boardOf(board.id).lookAgain();
  return answer.ok ? null : answer.fault;
}
