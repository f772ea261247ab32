import { number, objectOf, orNull, text, type Decoded } from "./decode.ts";

/** What is wrong with a question, as the program answers it; `field`, `line` and `column` say where. */
export const faultAnswer = objectOf({
  error: objectOf({ text, line: orNull(number), column: orNull(number), field: orNull(text) }),
});

/** `status` 0: the program did not answer at all. */
export type Fault = Decoded<typeof faultAnswer>["error"] & { readonly status: number };
