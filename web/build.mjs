// node build.mjs [FOLDER]   bundles the page into FOLDER (../build/web if not said), names with hashes of the content.
// Whatever the folder held before is gone; a build that fails leaves it as it was.
import { build } from "esbuild";
import { cp, mkdir, readFile, readdir, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const folder = resolve(process.argv[2] ?? join(here, "../build/web"));
const fresh = `${folder}.new`;

await rm(fresh, { recursive: true, force: true });
const { metafile } = await build({
  absWorkingDir: here,
  entryPoints: ["src/main.tsx"],
  bundle: true,
  splitting: true,
  format: "esm",
  target: ["chrome109", "firefox115", "safari16"],
  jsx: "automatic",
  jsxImportSource: "preact",
  minify: true,
  sourcemap: true,
  outdir: fresh,
  publicPath: "/",
  entryNames: "[name]-[hash]",
  chunkNames: "[name]-[hash]",
  assetNames: "[name]-[hash]",
  loader: { ".woff2": "file" },
  legalComments: "linked",
  metafile: true,
  logLevel: "warning",
});

/** What is bundled of others, each with its licence: they ask that it travels along. */
async function licences(inputs) {
  const packages = [...new Set(inputs.map((name) => /^node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(name)?.[1]))];
  const texts = packages.filter(Boolean).sort().map(async (name) => {
    const home = join(here, "node_modules", name);
    const file = (await readdir(home)).find((each) => /^licen[cs]e/i.test(each));
    if (!file) throw new Error(`${name} has no licence file`);
    return `${name}\n\n${(await readFile(join(home, file), "utf8")).trim()}\n`;
  });
  return (await Promise.all(texts)).join(`\n${"-".repeat(80)}\n\n`);
}

const built = (ending) => {
  const found = Object.entries(metafile.outputs).find(
    ([name, output]) => name.endsWith(ending) && (ending === ".css" || output.entryPoint === "src/main.tsx"),
  );
  if (!found) throw new Error(`no ${ending} was built`);
  return `/${found[0].slice(found[0].lastIndexOf("/") + 1)}`;
};
const index = await readFile(join(here, "src/index.html"), "utf8");
await writeFile(
  join(fresh, "index.html"),
  index.replace("{{style}}", built(".css")).replace("{{script}}", built(".js")),
);
for (const kept of ["icon.svg", "app.webmanifest"]) await cp(join(here, "src", kept), join(fresh, kept));
await cp(join(here, "src/icons"), fresh, { recursive: true });
await writeFile(join(fresh, "licences.txt"), await licences(Object.keys(metafile.inputs)));
await mkdir(dirname(folder), { recursive: true });
await rm(folder, { recursive: true, force: true });
await rename(fresh, folder);
