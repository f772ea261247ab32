import { DecodeError, type Decoder } from "../model/decode.ts";
import { faultAnswer, type Fault } from "../model/fault.ts";

/** What came of a question: the value, or what was wrong. */
export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: Fault };

export type Ask = "GET" | "PUT" | "POST" | "DELETE";

/** How a question travels: the browser's `fetch`, or a test's stand-in. */
export type Transport = (path: string, how: RequestInit) => Promise<Response>;

function fault(status: number, text: string): Answer<never> {
  return { ok: false, fault: { status, text, line: null, column: null, field: null } };
}

async function faultOf(response: Response): Promise<Answer<never>> {
  try {
    const { error } = faultAnswer(await response.json(), "");
    return { ok: false, fault: { ...error, status: response.status } };
  } catch {
    return fault(response.status, `the program answered with ${String(response.status)} and no reason`);
  }
}

export class Client {
  constructor(private readonly transport: Transport = (path, how) => fetch(path, how)) {}

  /** Asks with a value as JSON, or with none. An answer of another shape than `decode` reads is a fault. */
  async ask<T>(how: Ask, path: string, decode: Decoder<T>, value?: unknown, stop?: AbortSignal): Promise<Answer<T>> {
    const body = value === undefined && how === "GET" ? null : JSON.stringify(value ?? {});
    return await this.send(path, decode, {
      method: how,
      ...(body === null ? {} : { body, headers: { "Content-Type": "application/json" } }),
      ...(stop ? { signal: stop } : {}),
    });
  }

  /** Sends bytes of a file as they are. */
  async sendFile<T>(path: string, decode: Decoder<T>, bytes: BodyInit, type: string): Promise<Answer<T>> {
    return await this.send(path, decode, { method: "POST", body: bytes, headers: { "Content-Type": type } });
  }

  private async send<T>(path: string, decode: Decoder<T>, how: RequestInit): Promise<Answer<T>> {
    let response: Response;
    try {
      response = await this.transport(path, { credentials: "same-origin", ...how });
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return fault(0, "stopped");
      return fault(0, "the program does not answer; nothing you wrote is lost");
    }
    if (!response.ok) return await faultOf(response);
    try {
      return { ok: true, value: decode(await response.json(), "") };
    } catch (error) {
      const why = error instanceof DecodeError ? error.message : "it is no JSON";
      return fault(response.status, `the answer cannot be read: ${why}`);
    }
  }
}
