import assert from "node:assert/strict";
import { readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { test } from "node:test";

/** Each layer may import the layers named, and itself. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  model: [],
  api: ["model"],
  state: ["api", "model"],
  ui: ["state", "api", "model"],
  charts: ["state", "api", "model"],
  editor: ["state", "api", "model"],
  views: ["editor", "charts", "ui", "state", "api", "model"],
  main: ["views", "state"],
};

function sources(folder: string): readonly string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return sources(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

const layerOf = (path: string) => relative("src", path).split(/[/.]/)[0] ?? "";

function importsOf(path: string): readonly string[] {
  const text = readFileSync(path, "utf8");
  return [...text.matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map((met) => normalize(join(dirname(path), met[1] ?? "")));
}

const files = sources("src");

test("every layer is known", () => {
  assert.deepEqual(files.filter((file) => !(layerOf(file) in mayImport)), []);
});

for (const [layer, below] of Object.entries(mayImport)) {
  test(`${layer} imports only ${below.length ? below.join(", ") : "itself"}`, () => {
    const wrong = files
      .filter((file) => layerOf(file) === layer)
      .flatMap((file) => importsOf(file).map((met) => [file, met] as const))
      .filter(([, met]) => layerOf(met) !== layer && !below.includes(layerOf(met)))
      .map(([file, met]) => `${file} imports ${met}`);
    assert.deepEqual(wrong, []);
  });
}

test("the model and the questions touch no browser page", () => {
  const wrong = files.filter(
    (file) =>
      ["model", "api"].includes(layerOf(file)) &&
      /\b(document|window|localStorage)\b/.test(readFileSync(file, "utf8").replace(/\/\*\*?[\s\S]*?\*\/|\/\/.*/g, "")),
  );
  assert.deepEqual(wrong, []);
});
