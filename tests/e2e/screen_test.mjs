// The screen on the wall and the relief coach: each comes in by a link, sees their part, and no more once it is taken away.
import assert from "node:assert/strict";
import { test } from "node:test";
import { cannotRun, newPage, ownersFlows, seriousFaults } from "./support.mjs";

let gym, page;
const flow = ownersFlows((given) => ({ gym, page } = given));

/** Lets somebody in by a link; the link. */
async function letIn(role, name, classId) {
  await page.goto(`${gym.address}/accounts`);
  await page.getByRole("combobox", { name: /^As/ }).selectOption(role);
  if (classId) await page.getByRole("combobox", { name: /^Class/ }).selectOption({ value: classId });
  await page.getByLabel(role === "screen" ? "What you call it" : "Their name").fill(name);
  await page.getByRole("button", { name: "Make the link" }).click();
  await page.getByRole("img", { name: `The link of ${name} as a QR code` }).waitFor();
  return page.locator(".own-link").textContent();
}

const newDevice = (viewport) => newPage(page.context().browser(), { viewport });

flow("a screen shows the board, then the clock, then the results, by itself, and nothing can be entered", async () => {
  const link = await letIn("screen", "The wall");
  const wall = await newDevice({ width: 1920, height: 1080 });
  await wall.goto(link);
  await wall.getByRole("button", { name: "Board", pressed: true }).waitFor();
  const text = await wall.locator(".screen-lines").innerText();
  assert.ok(text.length > 20, "the board is on the wall");
  assert.deepEqual(await seriousFaults(wall), []);
  const { next_class: id } = await wall.evaluate(async () => (await fetch("/api/gym")).json());
  for (const path of ["/api/people", "/api/classes/" + id + "/scores", "/api/accounts", "/api/hall"])
    assert.equal(await wall.evaluate(async (at) => (await fetch(at)).status, path), 403, path);
  await page.goto(`${gym.address}/clock/${id}/remote`);
  await page.getByRole("button", { name: "Start", exact: true }).click();
  await page.getByText("This is the class of", { exact: false }).waitFor(); // the demo's classes are of other days
  await page.getByRole("button", { name: "Yes, start it" }).click();
  await wall.getByRole("button", { name: "Clock", pressed: true }).waitFor();
  await wall.locator(".clock-wall .figure").first().waitFor();
  assert.equal(await wall.getByRole("button", { name: "Pause" }).count(), 0);
  await page.getByRole("button", { name: "End the clock…" }).click();
  await page.getByRole("button", { name: "Yes, end the clock" }).click();
  await wall.getByRole("heading", { name: "Results" }).waitFor();
  await wall.getByRole("button", { name: "Board" }).click();
  await wall.locator(".screen-lines").waitFor();
  await page.goto(`${gym.address}/accounts`);
  await page.getByRole("button", { name: "Take away: The wall" }).click();
  await page.getByRole("button", { name: "Yes, take away" }).click();
  await page.getByRole("rowheader", { name: "The wall" }).waitFor({ state: "detached" });
  await wall.reload();
  await wall.getByRole("heading", { name: "Sign in" }).waitFor();
  assert.deepEqual(wall.faults, []);
  await wall.context().close();
});

flow("a relief coach opens a link and has one class, without a word to type", async () => {
  const link = await letIn("relief", "Jo", "sat-24");
  const phone = await newDevice({ width: 390, height: 844 });
  await phone.goto(link);
  await phone.getByRole("link", { name: "Arrivals" }).first().click();
  await phone.getByText(/0 here, 24 expected/).waitFor();
  await phone.getByRole("link", { name: "Clock" }).first().click();
  await phone.getByRole("button", { name: "Start", exact: true }).waitFor();
  assert.equal(await phone.evaluate(async () => (await fetch("/api/classes/wed-morning-9")).status), 403);
  assert.equal(await phone.getByRole("link", { name: "Who signs in" }).count(), 0);
  await phone.context().close();
});

test("a link that is none says so", { skip: cannotRun }, async () => {
  const phone = await newDevice({ width: 390, height: 844 });
  await phone.goto(`${gym.address}/#screen=nothing`);
  await phone.getByRole("alert").getByText(/opens nothing any more/).waitFor();
  await phone.context().close();
});
