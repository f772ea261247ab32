/** Reads one value of an answer; `at` says where it stands, for the error. Throws `DecodeError`. */
export type Decoder<T> = (value: unknown, at: string) => T;
/** What a decoder gives. */
export type Decoded<D> = D extends Decoder<infer T> ? T : never;

/** An answer that is not of the shape that the page was written for. */
export class DecodeError extends Error {
  constructor(at: string, expected: string, value: unknown) {
    super(`${at || "the answer"} is ${kindOf(value)}, expected ${expected}`);
    this.name = "DecodeError";
  }
}

function kindOf(value: unknown): string {
  if (value === null) return "null";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "an object" : JSON.stringify(value) ?? "missing";
}

export const text: Decoder<string> = (value, at) => {
  if (typeof value !== "string") throw new DecodeError(at, "a text", value);
  return value;
};

export const number: Decoder<number> = (value, at) => {
  if (typeof value !== "number" || !Number.isFinite(value)) throw new DecodeError(at, "a number", value);
  return value;
};

export const flag: Decoder<boolean> = (value, at) => {
  if (typeof value !== "boolean") throw new DecodeError(at, "true or false", value);
  return value;
};

/** Anything, to be passed on or looked at later. */
export const anything: Decoder<unknown> = (value) => value;

/** One of the words given. */
export function wordOf<const W extends readonly string[]>(...words: W): Decoder<W[number]> {
  return (value, at) => {
    const found = words.find((word) => word === value);
    if (found === undefined) throw new DecodeError(at, `one of ${words.join(", ")}`, value);
    return found;
  };
}

/** The value, or null where it is null or missing. */
export function orNull<T>(inner: Decoder<T>): Decoder<T | null> {
  return (value, at) => (value === undefined || value === null ? null : inner(value, at));
}

/** The value, or what stands in for one that is missing. */
export function orElse<T>(inner: Decoder<T>, missing: T): Decoder<T> {
  return (value, at) => (value === undefined ? missing : inner(value, at));
}

export function listOf<T>(inner: Decoder<T>): Decoder<readonly T[]> {
  return (value, at) => {
    if (!Array.isArray(value)) throw new DecodeError(at, "a list", value);
    return value.map((each, index) => inner(each, `${at}[${String(index)}]`));
  };
}

export function pairOf<A, B>(first: Decoder<A>, second: Decoder<B>): Decoder<readonly [A, B]> {
  return (value, at) => {
    if (!Array.isArray(value) || value.length !== 2) throw new DecodeError(at, "a pair", value);
    return [first(value[0], `${at}[0]`), second(value[1], `${at}[1]`)];
  };
}

function entriesOf(value: unknown, at: string): readonly (readonly [string, unknown])[] {
  if (typeof value !== "object" || value === null || Array.isArray(value))
    throw new DecodeError(at, "an object", value);
  return Object.entries(value);
}

/** An object used as a table: any keys, values of one kind. */
export function tableOf<T>(inner: Decoder<T>): Decoder<Readonly<Record<string, T>>> {
  return (value, at) =>
    Object.fromEntries(entriesOf(value, at).map(([key, each]) => [key, inner(each, `${at}.${key}`)]));
}

/** An object with these fields; others that it has are left out. */
export function objectOf<F extends Readonly<Record<string, Decoder<unknown>>>>(
  fields: F,
): Decoder<{ readonly [K in keyof F]: Decoded<F[K]> }> {
  return (value, at) => {
    const given: Record<string, unknown> = Object.fromEntries(entriesOf(value, at));
    const read = Object.entries(fields).map(([key, inner]) => [key, inner(given[key], at ? `${at}.${key}` : key)]);
    // The type system cannot follow fromEntries; every field was read by its own decoder just above.
    return Object.fromEntries(read) as { readonly [K in keyof F]: Decoded<F[K]> };
  };
}
