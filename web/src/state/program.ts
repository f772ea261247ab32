import { Client } from "../api/client.ts";
import { questions } from "../api/questions.ts";

/** The program that serves this page. */
export const program = questions(new Client());
