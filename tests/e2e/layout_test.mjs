// What stands where, on a laptop and on a phone: what a coach needs first is in sight.
import assert from "node:assert/strict";
import { test } from "node:test";
import { cannotRun, newPage, settled, sharedGym } from "./support.mjs";

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given));

const look = (name, size, body) =>
  test(name, { skip: cannotRun }, async () => {
    const page = await newPage(browser, { storageState: owner, viewport: size });
    await body(page);
    await page.context().close();
    assert.deepEqual(page.faults, []);
  });
const top = async (locator) => (await locator.first().boundingBox()).y;
const laptop = { width: 1440, height: 900 };
const phone = { width: 390, height: 844 };

look("on a laptop the board's lanes begin in sight, also once the board is fitted, and the text is whole", laptop, async (page) => {
  await page.goto(`${gym.address}/board/sat-two-clocks`);
  await page.locator(".lane-head").waitFor();
  await page.getByText("May help: odd start with", { exact: false }).first().waitFor();
  await settled(page);
  assert.ok((await top(page.locator(".lane-head"))) < 800);
  const before = await top(page.locator(".lane-head"));
  await page.getByRole("button", { name: "What may be done: below the lanes" }).click();
  await page.getByRole("button", { name: "Fit the board to the people" }).click();
  await page.locator("table.fits").first().waitFor({ timeout: 60_000 });
  await page.evaluate(() => scrollTo(0, 0));
  assert.equal(await top(page.locator(".lane-head")), before);
  const cut = await page.locator(".cm-scroller").evaluate((box) => box.scrollHeight - box.clientHeight);
  assert.ok(cut <= 1, "the text does not scroll inside itself");
});

look("on a laptop both columns of next class are filled", laptop, async (page) => {
  await page.goto(`${gym.address}/class/sat-24`);
  await page.getByRole("heading", { name: "The warm-up" }).waitFor();
  await page.locator(".drills").waitFor({ timeout: 60_000 });
  await settled(page);
  const [left, right] = await page.locator(".columns > .stack").evaluateAll((columns) =>
    columns.map((column) => column.lastElementChild.getBoundingClientRect().bottom - column.getBoundingClientRect().top),
  );
  assert.ok(Math.min(left, right) > 0.7 * Math.max(left, right), `${left} beside ${right}`);
});

look("on a phone next class comes in the order of need, and seldom used acts are behind one word", phone, async (page) => {
  await page.goto(`${gym.address}/class/sat-24`);
  await page.getByRole("heading", { name: "The hour" }).waitFor();
  await settled(page);
  const order = ["What matters", "Who comes", "Set out", "The hour", "What would help", "The board, read back", "The warm-up"];
  const tops = [];
  for (const name of order) tops.push(await top(page.getByRole("heading", { name })));
  assert.deepEqual(tops, [...tops].sort((a, b) => a - b));
  assert.equal(await page.getByRole("button", { name: /Sign out/ }).isVisible(), false);
  await page.locator("summary", { hasText: /^More$/ }).click();
  await page.getByRole("button", { name: /Sign out/ }).waitFor();
  await page.getByRole("link", { name: "Who signs in" }).click();
  await page.getByRole("heading", { name: "Who signs in" }).waitFor();
  assert.equal(await page.getByRole("button", { name: /Sign out/ }).isVisible(), false, "it folds again");
});

look("on a tablet whose gym, where to and all else stand in one row", { width: 820, height: 1180 }, async (page) => {
  await page.goto(gym.address);
  await page.getByRole("heading", { name: "The hour" }).waitFor();
  const head = await page.locator(".head").boundingBox();
  assert.ok(head.height < 64, `the head is ${head.height} high`);
  await page.locator("summary", { hasText: /^More$/ }).click();
  await page.getByRole("button", { name: /Sign out/ }).waitFor();
});

look("on a phone no number of the hall is cut, and a new class is left by saying so", phone, async (page) => {
  await page.goto(`${gym.address}/hall`);
  const cells = page.locator(".hall-columns td .number-cell");
  await cells.first().waitFor();
  const cut = await cells.evaluateAll((all) => all.filter((each) => each.scrollWidth > each.clientWidth).map((each) => each.value));
  assert.deepEqual(cut, []);
  await page.goto(`${gym.address}/classes/new`);
  await page.getByRole("button", { name: "Make none" }).click();
  await page.getByRole("heading", { name: /Next class/ }).first().waitFor();
});

look("on a phone the floor's own things begin within a fifth of it, somebody new above the list", phone, async (page) => {
  await page.goto(`${gym.address}/arrivals/sat-24`);
  await page.locator(".ticks li").first().waitFor();
  await settled(page);
  assert.ok((await top(page.getByRole("heading", { name: /Arrivals/ }))) < phone.height / 5);
  assert.ok((await top(page.getByLabel("Somebody new at the door: their name"))) < (await top(page.locator(".ticks li"))));
  const heights = await page.locator(".floor-stops a, button.emergency").evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
  assert.ok(Math.min(...heights) >= 48, String(heights));
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), phone.width);
});
