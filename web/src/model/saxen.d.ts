/** saxen 10 brings no types: what is used of it. */
declare module "saxen" {
  type Decode = (text: string) => string;
  export type OpenTag = (name: string, attributes: () => Record<string, string>, decode: Decode) => void;
  export class Parser {
    on(event: "openTag", heard: OpenTag): this;
    on(event: "closeTag", heard: (name: string) => void): this;
    on(event: "text", heard: (text: string, decode: Decode) => void): this;
    on(event: "cdata", heard: (text: string) => void): this;
    on(event: "error", heard: (error: Error) => void): this;
    parse(xml: string): this;
  }
}
