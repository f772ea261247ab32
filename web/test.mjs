// node test.mjs [NAME...]   bundles test/*_test.ts(x) and runs them with node:test; NAME picks files by a part of the name.
import { build } from "esbuild";
import { spawnSync } from "node:child_process";
import { readdir, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, "../build/web-tests");
const picked = process.argv.slice(2);

const all = (await readdir(join(here, "test"))).filter((name) => /_test\.tsx?$/.test(name));
const wanted = all.filter((name) => picked.length === 0 || picked.some((part) => name.includes(part)));
if (wanted.length === 0) {
  console.error("no test of that name");
  process.exit(2);
}
await rm(out, { recursive: true, force: true });
await build({
  absWorkingDir: here,
  entryPoints: wanted.map((name) => `test/${name}`),
  bundle: true,
  platform: "node",
  format: "esm",
  outExtension: { ".js": ".mjs" },
  jsx: "automatic",
  jsxImportSource: "preact",
  sourcemap: "inline",
  loader: { ".css": "empty", ".woff2": "empty" },
  outdir: out,
  logLevel: "warning",
});
const files = (await readdir(out)).filter((name) => name.endsWith(".mjs")).map((name) => join(out, name));
const run = spawnSync(process.execPath, ["--enable-source-maps", "--test-reporter=spec", "--test", ...files], {
  cwd: here,
  stdio: "inherit",
});
process.exit(run.status ?? 1);
