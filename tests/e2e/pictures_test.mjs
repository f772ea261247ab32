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
  ["house", "/house"],
  ["new-class", "/classes/new"],
  ["class-plan", "/classes/wed-19-for-12"],
  ["trail", "/trail"],
  ["members", "/wall/sat-two-clocks"],
  ["accounts", "/accounts"],
  ["arrivals", "/arrivals/sat-24"],
  ["runners", "/runners/sat-24"],
  ["scores", "/scores/sat-24"],
  ["results", "/results/sat-24"],
  ["remote", "/clock/sat-24/remote"],
];
const guests = [
  ["own", "person", { person: "a07", pin: "4711" }],
  ["screen-board", "screen", {}],
];

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given));

/** A page of somebody who came in by a link that the owner made. */
async function guestPage(role, more, viewport) {
  const first = await newPage(browser, { storageState: owner });
  await first.goto(gym.address);
  const name = `${role} ${String(viewport.width)}`;
  const link = await first.evaluate(
    async (account) =>
      (await (await fetch("/api/accounts", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(account) })).json()).link,
    { name, role, ...more },
  );
  await first.context().close();
  const page = await newPage(browser, { viewport });
  await page.goto(`${gym.address}/#${role}=${link}`);
  if (role === "person") {
    await page.getByLabel("PIN").fill("4711");
    await page.getByRole("button", { name: "Open" }).click();
    await page.getByText("Target").first().waitFor();
  }
  return page;
}

/** The page as it stands in both colours, and what is wrong with it. */
async function look(page, name, viewport) {
  const found = [];
  await settled(page);
  for (const colorScheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme });
    await page.locator(`[data-theme=${colorScheme}]`).waitFor();
    await page.screenshot({ path: join(pictures, `${name}-${viewport.width}-${colorScheme}.png`), fullPage: true });
    for (const fault of await seriousFaults(page)) found.push(`${name} in ${colorScheme}: ${fault}`);
  }
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  if (wide > 0) found.push(`${name} is ${wide} px wider than the screen`);
  return found;
}

for (const viewport of sizes)
  test(`what a member and the wall see at ${viewport.width} has nothing serious, light and dark`, { skip: cannotRun }, async () => {
    const found = [];
    for (const [name, role, more] of guests) {
      const page = await guestPage(role, more, viewport);
      await page.getByRole("heading", { level: 1 }).first().waitFor();
      found.push(...(await look(page, name, viewport)));
      assert.deepEqual(page.faults, []);
      await page.context().close();
    }
    assert.deepEqual(found, []);
  });

for (const viewport of sizes)
  test(`every page at ${viewport.width} has nothing serious, light and dark`, { skip: cannotRun }, async () => {
    const page = await newPage(browser, { viewport, storageState: owner });
    const found = [];
    for (const [name, path] of views) {
      await page.goto(gym.address + path);
      await page.getByRole("heading", { level: 1 }).first().waitFor();
      found.push(...(await look(page, name, viewport)));
    }
    assert.deepEqual(found, []);
    assert.deepEqual(page.faults, []);
    await page.context().close();
  });
