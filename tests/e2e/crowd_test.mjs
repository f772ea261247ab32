// A class of 60: the board's page and the class's page stay legible.
import assert from "node:assert/strict";
import { join } from "node:path";
import { test } from "node:test";
import { cannotRun, newPage, pictures, seriousFaults, settled, sharedGym } from "./support.mjs";

const looks = [
  { width: 1440, height: 900, colorScheme: "light" },
  { width: 390, height: 844, colorScheme: "light" },
  { width: 1920, height: 1080, colorScheme: "dark" },
];
const views = [
  ["board", "/board/sat-two-clocks"],
  ["class", "/class/sat-24"],
];

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given), { heads: 60 });

/** What of a crowd cannot be read, in words. */
const illegible = (page) =>
  page.evaluate(() => {
    const found = [];
    const wide = document.documentElement.scrollWidth - innerWidth;
    if (wide > 0) found.push(`${wide} px wider than the screen`);
    const lanes = [...document.querySelectorAll("[role=option]")];
    const low = lanes.filter((lane) => lane.getBoundingClientRect().height < 16).length;
    if (low > 0) found.push(`${low} lanes are lower than 16 px`);
    for (const [one, next] of lanes.map((lane, index) => [lane, lanes[index + 1]]))
      if (next && one.getBoundingClientRect().bottom > next.getBoundingClientRect().top + 1) found.push("lanes lie over each other");
    return found;
  });

for (const { width, height, colorScheme } of looks)
  test(`60 people stay legible at ${width} in ${colorScheme}`, { skip: cannotRun }, async () => {
    const page = await newPage(browser, { viewport: { width, height }, colorScheme, storageState: owner });
    const found = [];
    for (const [name, path] of views) {
      await page.goto(gym.address + path);
      await settled(page);
      if (name === "board") assert.equal(await page.getByRole("option").and(page.locator(".lane")).count(), 60);
      else await page.getByText("60 come").waitFor();
      await page.screenshot({ path: join(pictures, `${name}-60-${width}-${colorScheme}.png`), fullPage: true });
      for (const fault of [...(await illegible(page)), ...(await seriousFaults(page))]) found.push(`${name}: ${fault}`);
    }
    assert.deepEqual(found, []);
    assert.deepEqual(page.faults, []);
    await page.context().close();
  });
