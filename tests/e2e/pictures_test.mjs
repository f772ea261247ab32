// Every page at three sizes, light and dark: pictures into build/pictures, and what axe finds in each.
import assert from "node:assert/strict";
import { join } from "node:path";
import { test } from "node:test";
import { cannotRun, newPage, pictures, seriousFaults, settled, sharedGym } from "./support.mjs";

const sizes = [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1920, height: 1080 },
];
const views = [
  ["next-class", "/"],
  ["class-of-24", "/class/sat-24"],
  ["board", "/board/sat-two-clocks"],
  ["people", "/people"],
  ["person", "/people/a07"],
  ["hall", "/hall"],
  ["members", "/wall/sat-two-clocks"],
  ["accounts", "/accounts"],
  ["arrivals", "/arrivals/sat-24"],
  ["runners", "/runners/sat-24"],
  ["scores", "/scores/sat-24"],
  ["results", "/results/sat-24"],
];

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given));

for (const viewport of sizes)
  test(`every page at ${viewport.width} has nothing serious, light and dark`, { skip: cannotRun }, async () => {
    const page = await newPage(browser, { viewport, storageState: owner });
    const found = [];
    for (const [name, path] of views) {
      await page.goto(gym.address + path);
      await page.getByRole("heading", { level: 1 }).first().waitFor();
      await settled(page);
      for (const colorScheme of ["light", "dark"]) {
        await page.emulateMedia({ colorScheme });
        await page.locator(`[data-theme=${colorScheme}]`).waitFor();
        await page.screenshot({ path: join(pictures, `${name}-${viewport.width}-${colorScheme}.png`), fullPage: true });
        for (const fault of await seriousFaults(page)) found.push(`${name} in ${colorScheme}: ${fault}`);
      }
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (wide > 0) found.push(`${name} is ${wide} px wider than the screen`);
    }
    assert.deepEqual(found, []);
    assert.deepEqual(page.faults, []);
    await page.context().close();
  });
