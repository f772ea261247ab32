// What a gym does on the page, from the first start on; each test has a gym of its own.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { ask, becomeOwner, cannotRun, newPage, seriousFaults, serveDemo, settled, sharedGym } from "./support.mjs";

const data = join(dirname(fileURLToPath(import.meta.url)), "../data");

// Each has a browser of its own; those that change people or who signs in have a gym of their own as well.
let browser, shared, owner, gym, page;
sharedGym((given) => ({ gym: shared, browser, owner } = given));

/** A flow of the owner in the gym of all. */
const flow = (name, body) =>
  test(name, { skip: cannotRun }, async () => {
    gym = shared;
    page = await newPage(browser, { storageState: owner });
    await page.goto(gym.address);
    await body();
    await page.context().close();
    assert.deepEqual(page.faults, []);
  });
/** A flow that begins with the first start of a gym. */
const firstStart = (name, body) =>
  test(name, { skip: cannotRun }, async (told) => {
    gym = await serveDemo();
    told.after(() => gym.stop());
    page = await newPage(browser);
    await body();
    await page.context().close();
    assert.deepEqual(page.faults, []);
  });
const alert = () => page.getByRole("alert");

firstStart("the first start makes an owner by the link of the terminal, once", async () => {
  await page.goto(gym.address);
  await page.getByRole("heading", { name: "No owner yet" }).waitFor();
  await becomeOwner(page, gym);
  assert.equal(new URL(page.url()).hash, "", "the link does not stay in the address");
  await page.getByText("Invented data").waitFor();
  await page.getByRole("button", { name: /Sign out/ }).click();
  await page.getByRole("heading", { name: "Sign in" }).waitFor();
  await page.goto(gym.ownerLink);
  await page.getByRole("button", { name: "Open the gym" }).click();
  await alert().getByText("used before").waitFor();
});

test("a gym begins in a file that is not there yet, and is there again afterwards", { skip: cannotRun }, async (told) => {
  gym = await serveDemo({ fresh: true });
  told.after(() => gym.stop());
  page = await newPage(browser);
  await becomeOwner(page, gym);
  await page.getByRole("heading", { name: "No class ahead" }).waitFor();
  assert.deepEqual(await seriousFaults(page), []);
  await ask(page, "PUT", "/api/boards/first", { text: "3 RFT\n10 push-ups\n" });
  await page.goto(`${gym.address}/people`);
  await page.getByText("Nobody yet. Add somebody").waitFor();
  await page.goto(`${gym.address}/hall`);
  await page.getByLabel("Name of the gym").fill("The Fresh Shed (invented)");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.locator(".head .gym", { hasText: "The Fresh Shed" }).waitFor();
  await gym.kill();
  await gym.again();
  await page.goto(`${gym.address}/board/first`);
  await page.getByText("10 push-ups").first().waitFor();
  await page.context().close();
  assert.deepEqual(page.faults, []);
});

firstStart("who signed out comes in by name and password, and not by a wrong one", async () => {
  await becomeOwner(page, gym, "a long enough word");
  await page.getByRole("button", { name: /Sign out/ }).click();
  await page.getByLabel("Name").fill("Mira");
  await page.getByLabel("Password").fill("something else entirely");
  await page.getByRole("button", { name: "Sign in" }).click();
  await alert().getByText("is not right").waitFor();
  await page.getByLabel("Password").fill("a long enough word");
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.getByRole("heading", { name: /Next class/ }).waitFor();
});

flow("the next class says who comes, what matters, the hour and what to set out, and prints in one act", async () => {
  for (const title of ["What matters", "The hour", "Who comes", "Set out", "The board, read back"])
    await page.getByRole("heading", { name: title }).waitFor();
  await page.getByText("No overhead, no hanging").first().waitFor();
  await page.getByText("Caution.").waitFor();
  await page.evaluate(() => {
    globalThis.printed = 0;
    globalThis.print = () => ++globalThis.printed;
  });
  await page.getByRole("button", { name: "Print the brief" }).click();
  assert.equal(await page.evaluate(() => globalThis.printed), 1);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.getByRole("navigation").isVisible(), false);
  assert.equal(await page.getByRole("heading", { name: "Who comes" }).isVisible(), true);
});

firstStart("a table with bad cells names each of them and saves nothing; mended, it is saved", async () => {
  await becomeOwner(page, gym);
  await page.getByRole("link", { name: "People" }).click();
  const before = readFileSync(join(gym.folder, "people.csv"), "utf8");
  await page.getByRole("button", { name: "Import a table" }).click();
  const table = (sex, run) => ({
    name: "new.csv",
    mimeType: "text/csv",
    buffer: Buffer.from(`name;sex;run 400 m\nJo Invented;${sex};${run}\nYusra Brandvoll;f;1:39\n`),
  });
  await page.getByLabel(/Workbook/).setInputFiles(table("q", "fast"));
  await alert().getByText("2 cells cannot be read").waitFor();
  await alert().getByRole("cell", { name: "run 400 m" }).waitFor();
  assert.equal(readFileSync(join(gym.folder, "people.csv"), "utf8"), before);
  await page.getByLabel(/Workbook/).setInputFiles(table("f", "1:35"));
  await page.getByRole("button", { name: "Save 2 people" }).click();
  await page.getByText("25 people").waitFor();
  await page.getByRole("link", { name: "Jo Invented" }).click();
  await page.getByText("1:35").waitFor();
  assert.match(readFileSync(join(gym.folder, "people.csv"), "utf8"), /Jo Invented/);
});

flow("marks that do not fit beside the names are said, and one tap away", async () => {
  await page.goto(`${gym.address}/people`);
  const more = page.getByRole("button", { name: "More marks to the right" });
  const table = page.getByRole("region", { name: "People and their marks" });
  await more.waitFor();
  const at = () => table.evaluate((box) => box.scrollLeft);
  assert.equal(await at(), 0);
  await more.click();
  await page.waitForFunction(() => document.querySelector(".wide").scrollLeft > 100);
  await table.evaluate((box) => box.scrollTo({ left: box.scrollWidth }));
  await more.waitFor({ state: "hidden" });
});

flow("a workbook is read like a table, times as they were typed, and its bad cells are named", async () => {
  await page.getByRole("link", { name: "People" }).click();
  await page.getByRole("button", { name: "Import a table" }).click();
  const file = page.getByLabel(/Workbook/);
  await file.setInputFiles(join(data, "people.xlsx"));
  await alert().getByText("2 cells cannot be read").waitFor();
  await alert().getByRole("row", { name: /3 Lé Invented sex/ }).waitFor();
  await alert().getByRole("row", { name: /3 Lé Invented max push-up/ }).waitFor();
  await file.setInputFiles({ name: "people.xlsx", mimeType: "", buffer: Buffer.from("PK\u0003\u0004 no book") });
  await alert().getByText("no XLSX workbook").waitFor();
  await page.getByText("24 people").waitFor();
});

firstStart("somebody is added with a limit, a wrong mark is named at its field, and the floor sees the action", async () => {
  await becomeOwner(page, gym);
  await page.getByRole("link", { name: "People" }).click();
  await page.getByRole("link", { name: "Add somebody" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Cy Invented");
  await page.getByLabel("run 2000 m").fill("quick");
  await page.getByRole("button", { name: "Add a limit" }).click();
  await page.getByLabel("Avoids").selectOption({ index: 1 });
  await page.getByLabel("What the floor sees, as an action").fill("Floor press today");
  await page.getByRole("button", { name: "Save" }).click();
  await alert().getByText("Not saved").waitFor();
  assert.equal(await page.getByLabel("run 2000 m").getAttribute("aria-invalid"), "true");
  await page.getByLabel("run 2000 m").fill("9:10");
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByRole("heading", { name: "Cy Invented" }).waitFor();
  await page.getByText("Floor press today").waitFor();
  await page.getByText("9:10").waitFor();
});

flow("a place that breaks counts at once in the next class", async () => {
  await page.getByRole("link", { name: "Hall" }).click();
  const bikes = page.getByRole("listitem").filter({ hasText: "Fan bike" });
  await bikes.getByText("all 4 work").waitFor();
  await bikes.getByRole("button", { name: /is out of order/ }).click();
  await bikes.getByText("1 of 4 out").waitFor();
  await page.getByRole("link", { name: "Next class" }).click();
  await page.getByText("Fan bike: 3 places, 1 out of order").waitFor();
});

flow("the hall is changed and saved as a whole, or left as it was", async () => {
  await page.getByRole("link", { name: "Hall" }).click();
  const rowers = page.getByLabel(/^How many: Row/).first();
  const before = await rowers.inputValue();
  await rowers.fill("3");
  await rowers.blur();
  await page.getByText("not saved yet").waitFor();
  await page.getByRole("button", { name: "Leave as it was" }).click();
  assert.equal(await rowers.inputValue(), before);
  await rowers.fill("3");
  await rowers.blur();
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText("not saved yet").waitFor({ state: "detached" });
  await page.reload();
  assert.equal(await page.getByLabel(/^How many: Row/).first().inputValue(), "3");
});

firstStart("a relief coach sees the one class, and a person their own page", async () => {
  await becomeOwner(page, gym);
  await page.getByRole("link", { name: "Who signs in" }).click();
  await page.getByRole("combobox", { name: /^As/ }).selectOption("relief");
  await page.getByRole("combobox", { name: /^Class/ }).selectOption({ value: "sat-24" });
  await page.getByLabel("Their name").fill("Relief");
  await page.getByRole("button", { name: "Make the link" }).click();
  await page.getByRole("img", { name: "The link of Relief as a QR code" }).waitFor();
  const linkOfRelief = await page.locator(".own-link").textContent();
  await page.getByRole("combobox", { name: /^As/ }).selectOption("person");
  await page.getByRole("combobox", { name: /^Person/ }).selectOption({ value: "a07" });
  await page.getByLabel("PIN").fill("4711");
  await page.getByRole("button", { name: "Let in" }).click();
  await page.getByRole("img", { name: "The link of Hyun-ae Marlowe as a QR code" }).waitFor();
  const link = await page.locator(".own-link").textContent();
  await page.getByRole("button", { name: "Copy the link" }).click();
  await page.getByText("Copied.").waitFor();

  const relief = await newPage(browser);
  await relief.goto(linkOfRelief);
  await relief.getByRole("heading", { name: "Who comes" }).waitFor();
  await relief.getByText("No overhead, no hanging").first().waitFor();
  assert.equal(await relief.getByRole("link", { name: "People" }).count(), 0);
  await relief.goto(`${gym.address}/people`);
  await relief.getByText("nothing for you at this address").waitFor();
  assert.deepEqual(relief.faults, []);
  await relief.context().close();

  const person = await newPage(browser, { viewport: { width: 390, height: 844 } });
  await person.goto(link);
  await person.getByLabel("PIN").fill("4711");
  await person.getByRole("button", { name: "Open" }).click();
  await person.getByRole("heading", { name: "Hyun-ae Marlowe" }).waitFor();
  await person.getByText("No weight on flat palms").first().waitFor();
  const words = await person.locator("body").innerText();
  assert.doesNotMatch(words, /Yusra|No overhead/);
  await person.goto(`${gym.address}/people/a08`);
  await person.getByRole("heading", { name: "Hyun-ae Marlowe" }).waitFor();
  assert.deepEqual(await seriousFaults(person), []);
  assert.deepEqual(person.faults, []);
  await person.context().close();
});

flow("everything is reached by keyboard, and the focus is seen", async () => {
  await page.getByRole("heading", { name: "Who comes" }).waitFor();
  await page.evaluate(() => document.activeElement.blur());
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement.textContent), "To the content");
  const seen = [];
  for (let i = 0; i < 30; ++i) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const focused = document.activeElement;
      const outline = getComputedStyle(focused);
      return { body: focused === document.body, words: focused.textContent.trim(), seen: outline.outlineStyle !== "none" && parseFloat(outline.outlineWidth) >= 2 };
    });
    if (at.words === "" || at.body) continue;
    assert.ok(at.seen, `${at.words} has no ring`);
    seen.push(at.words);
  }
  for (const words of ["Next class", "Board", "People", "Hall", "Print the brief"]) assert.ok(seen.includes(words), words);
  await page.getByRole("link", { name: "People" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "People" }).waitFor();
});

flow("at 200 % zoom of a laptop nothing is cut", async () => {
  const zoomed = { viewport: { width: 720, height: 450 }, deviceScaleFactor: 2, storageState: owner };
  const small = await newPage(browser, zoomed);
  for (const path of ["/", "/board/sat-two-clocks", "/wall/sat-two-clocks", "/people", "/people/a07", "/hall", "/accounts"]) {
    await small.goto(gym.address + path);
    await small.getByRole("heading", { level: 1 }).first().waitFor();
    await settled(small);
    assert.ok(await small.evaluate(() => document.documentElement.scrollWidth <= innerWidth), path);
  }
  assert.deepEqual(small.faults, []);
  await small.context().close();
});

firstStart("it works on a plain name of the network, over http", async () => {
  const address = new URL(gym.ownerLink);
  address.hostname = "gym.local";
  await becomeOwner(page, { ownerLink: address.href });
  await page.getByRole("heading", { name: "Who comes" }).waitFor();
  await page.getByRole("link", { name: "Hall" }).click();
  const rowers = page.getByLabel(/^How many: Row/).first();
  await rowers.fill("4");
  await rowers.blur();
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText("not saved yet").waitFor({ state: "detached" });
});

firstStart("what another browser changes is seen here without a reload", async () => {
  await becomeOwner(page, gym);
  await page.getByRole("link", { name: "People" }).click();
  await page.getByText("24 people").waitFor();
  const other = await newPage(browser, { storageState: await page.context().storageState() });
  await other.goto(`${gym.address}/people/new`);
  await other.getByLabel("Name", { exact: true }).fill("Di Invented");
  await other.getByRole("button", { name: "Save" }).click();
  await other.getByRole("heading", { name: "Di Invented" }).waitFor();
  await page.getByText("25 people").waitFor();
  await other.context().close();
});

flow("a program that is gone is said, and comes back by one act", async () => {
  await page.route("**/api/people", (route) => route.abort());
  await page.getByRole("link", { name: "People" }).click();
  await alert().getByText("does not answer").waitFor();
  page.faults.length = 0;
  await page.unroute("**/api/people");
  await page.getByRole("button", { name: "Try again" }).click();
  await page.getByText("24 people").waitFor();
});
