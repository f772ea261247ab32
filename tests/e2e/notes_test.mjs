// What members and coaches told: on the person's page, with a score, and beside who comes to the class.
import assert from "node:assert/strict";
import { test } from "node:test";
import { cannotRun, newPage, seriousFaults, sharedGym } from "./support.mjs";

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given), { inFile: true });

const told = (page) => page.getByRole("region", { name: "Told to the coaches" });

test("a word of a person stands on their page and at the class that they come to, until it is taken away", { skip: cannotRun }, async () => {
  const page = await newPage(browser, { storageState: owner });
  await page.goto(`${gym.address}/people/a10`);
  await told(page).getByText("Nothing yet.").waitFor();
  await told(page).getByLabel("A word for the other coaches").fill("likes the end bar");
  await told(page).getByLabel("Until (may stay empty)").fill("2030-06-30");
  await told(page).getByRole("button", { name: "Tell" }).click();
  await told(page).getByText("by Mira").waitFor();
  assert.deepEqual(await seriousFaults(page), []);
  // Somebody who does not come to that class says something, too: as a phone sends it.
  await page.evaluate(() =>
    fetch("/api/notes", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ person: "a01", text: "away for a week" }) }),
  );
  await page.goto(`${gym.address}/class/wed-morning-9`);
  await told(page).getByText("likes the end bar").waitFor();
  await told(page).getByText("until Sun 30 Jun").waitFor();
  const others = told(page).getByText("1 word of somebody not in this class");
  assert.equal(await told(page).getByText("away for a week").isVisible(), false);
  await others.click();
  await told(page).getByText("away for a week").waitFor();
  await told(page).getByRole("button", { name: "Take away: likes the end bar" }).click();
  await told(page).locator("button:focus").getByText("No").waitFor(); // a key that is held takes nothing away
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Enter");
  await told(page).getByText("likes the end bar").waitFor({ state: "detached" });
  await page.goto(`${gym.address}/people/a10`);
  await told(page).getByText("Nothing yet.").waitFor();
  await page.context().close();
  assert.deepEqual(page.faults, []);
});

test("while a changed board is rehearsed, what stands there says that it is old", { skip: cannotRun }, async () => {
  const page = await newPage(browser, { storageState: owner });
  await page.goto(`${gym.address}/class/sat-24`);
  const take = page.getByRole("button", { name: "Take it" }).first();
  await take.waitFor({ timeout: 60_000 });
  assert.equal(await page.locator(".may-be-old.old").count(), 0);
  let go = () => undefined;
  const held = new Promise((done) => (go = done));
  await page.route("**/api/rehearse", async (route) => {
    await held;
    await route.continue();
  });
  await take.click();
  await page.getByRole("status").getByText("Rehearsing again").waitFor();
  assert.equal(await page.locator(".may-be-old.old[aria-busy=true]").count(), 1);
  go();
  await page.getByRole("status").getByText("Rehearsing again").waitFor({ state: "detached", timeout: 60_000 });
  assert.equal(await page.locator(".may-be-old.old").count(), 0);
  await page.context().close();
  assert.deepEqual(page.faults, []);
});
