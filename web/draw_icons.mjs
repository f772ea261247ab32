// node draw_icons.mjs   draws src/icons/*.png from src/icon.svg with the browser of the end-to-end tests. Run it when the
// icon changes; the pictures are kept, so that a build needs no browser.
import { readFile, mkdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const here = dirname(fileURLToPath(import.meta.url));
const svg = await readFile(join(here, "src/icon.svg"), "utf8");
const folder = join(here, "src/icons");
await mkdir(folder, { recursive: true });

/** A system may cut a maskable icon to a circle of 80 % of its width (W3C Web Application Manifest): ours is drawn within. */
const pictures = [
  { name: "icon-192", size: 192, share: 1, ground: "transparent" },
  { name: "icon-512", size: 512, share: 1, ground: "transparent" },
  { name: "icon-maskable-512", size: 512, share: 0.7, ground: "#1b1f24" },
];

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
for (const { name, size, share, ground } of pictures) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<style>html,body{margin:0;height:100%;background:${ground}}body{display:grid;place-items:center}svg{width:${100 * share}%}</style>${svg}`,
  );
  await page.screenshot({ path: join(folder, `${name}.png`), omitBackground: ground === "transparent" });
  await page.close();
}
await browser.close();
