// How a class comes to be and is changed on the page, from a gym that has none, with the keyboard and on a phone.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { ask, becomeOwner, cannotRun, newPage, openBrowser, seriousFaults, serveDemo, settled } from "./support.mjs";

/** A gym without classes, its owner on a page of that size. */
const firstClass = (name, size, body) =>
  test(name, { skip: cannotRun }, async (told) => {
    const [gym, browser] = await Promise.all([serveDemo({ classes: false }), openBrowser()]);
    told.after(() => Promise.all([browser.close(), gym.stop()]));
    const page = await newPage(browser, { viewport: size });
    await becomeOwner(page, gym);
    await body({ gym, page, browser });
    assert.deepEqual(page.faults, []);
  });

const kept = (gym, id) => JSON.parse(readFileSync(join(gym.folder, `classes/${id}.json`), "utf8"));
const laptop = { width: 1440, height: 900 };
const phone = { width: 390, height: 844 };

firstClass("a gym without a class makes one by keyboard alone, and it is the next class", laptop, async ({ gym, page }) => {
  await page.getByRole("heading", { name: "No class ahead" }).waitFor();
  await page.getByRole("link", { name: "Make a class" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Make the class" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("alert").getByText("Say on which day the class is. Say when it starts").waitFor();
  await page.getByLabel("Day", { exact: true }).focus();
  await page.keyboard.type("05152027");
  await page.getByText("Saturday 15 May 2027").waitFor();
  await page.getByLabel("Start").focus();
  await page.keyboard.type("0900AM");
  await page.getByLabel("Minutes", { exact: true }).fill("0");
  await page.getByRole("combobox", { name: "Board" }).focus();
  await page.getByRole("combobox", { name: "Board" }).selectOption("sat-two-clocks");
  await page.getByRole("button", { name: /of Saturdays/ }).focus();
  await page.keyboard.press("Space");
  await page.getByLabel("All indoors").focus();
  await page.keyboard.press("Space");
  await page.getByLabel("All indoors").press("Enter");
  await page.getByRole("alert").getByText("Minutes from 1 to 1440").waitFor();
  await page.getByLabel("Minutes", { exact: true }).fill("60");
  assert.deepEqual(await seriousFaults(page), []);
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Next class: Saturday 15 May 2027, 09:00" }).waitFor();
  await page.getByText("60 minutes; all indoors").waitFor();
  await page.getByRole("heading", { name: "Who comes" }).waitFor();
  const made = kept(gym, "2027-05-15-0900");
  assert.equal(made.board_id, "sat-two-clocks");
  assert.ok(made.booked.length > 5);
});

firstClass("on a phone a class is made, changed and made again a week later", phone, async ({ gym, page }) => {
  await page.goto(`${gym.address}/classes/new?board=sat-two-clocks`);
  await page.getByLabel("Day", { exact: true }).fill("2027-05-15");
  await page.getByLabel("Start").fill("17:30");
  await page.getByLabel("Find").fill("anou");
  await page.locator(".booked-list input").first().check();
  await page.getByText(/^1 of \d+ people booked/).waitFor();
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), phone.width);
  await page.getByRole("button", { name: "Make the class" }).click();
  await page.getByRole("heading", { name: /Saturday 15 May 2027, 17:30/ }).waitFor();
  await page.getByText("More of this class").click();
  await page.getByRole("link", { name: "Change the class" }).click();
  await page.getByLabel("Rain").check();
  await page.getByLabel("Temperature, °C").fill("-3");
  await page.getByLabel("Start").fill("18:00");
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByRole("heading", { name: /Saturday 15 May 2027, 18:00/ }).waitFor();
  const made = kept(gym, "2027-05-15-1730");
  assert.deepEqual([made.weather.rain, made.weather.temp_c, made.start, made.booked.length], [true, -3, "18:00", 1]);
  await page.goto(`${gym.address}/classes/2027-05-15-1730`);
  await page.getByRole("link", { name: "Again a week later" }).click();
  await page.getByRole("heading", { name: "A new class" }).waitFor();
  await page.getByRole("button", { name: "Make the class" }).click();
  await page.getByRole("heading", { name: /Saturday 22 May 2027, 18:00/ }).waitFor();
  assert.equal(kept(gym, "2027-05-22-1800").booked.length, 1);
});

firstClass("a class made by mistake is taken away in two taps, one with scores stays", phone, async ({ gym, page }) => {
  for (const [id, date] of [["by-mistake", "2027-05-15"], ["held", "2027-05-16"]])
    await ask(page, "PUT", `/api/classes/${id}`, { class: { id, date, start: "09:00", board_id: "sat-two-clocks", booked: ["a07"] } });
  await ask(page, "POST", "/api/classes/held/scores", { person: "a07", score: "22:10" });
  await page.goto(`${gym.address}/classes/by-mistake`);
  await page.getByRole("button", { name: "Take this class away…" }).click();
  await page.getByRole("button", { name: "No, it stays" }).click();
  assert.ok(existsSync(join(gym.folder, "classes/by-mistake.json")));
  await page.getByRole("button", { name: "Take this class away…" }).click();
  await page.getByText("The board stays.").waitFor();
  assert.deepEqual(await seriousFaults(page), []);
  await page.getByRole("button", { name: "Yes, take it away" }).click();
  await page.getByRole("heading", { name: /Sunday 16 May 2027/ }).waitFor();
  assert.ok(!existsSync(join(gym.folder, "classes/by-mistake.json")));
  await page.goto(`${gym.address}/classes/held`);
  await page.getByRole("button", { name: "Take this class away…" }).click();
  await page.getByRole("button", { name: "Yes, take it away" }).click();
  await page.getByRole("alert").getByText("Not taken away. Scores of this class are kept, so it stays.").waitFor();
  assert.ok(existsSync(join(gym.folder, "classes/held.json")));
});

firstClass("two who change one class: other parts go together, the same part is asked about", laptop, async ({ gym, page }) => {
  const make = async () => {
    await page.goto(`${gym.address}/classes/new`);
    await page.getByLabel("Day", { exact: true }).fill("2027-05-15");
    await page.getByLabel("Start").fill("09:00");
    await page.getByRole("button", { name: "Make the class" }).click();
    await page.getByRole("heading", { name: /Saturday 15 May/ }).waitFor();
  };
  await make();
  assert.ok(existsSync(join(gym.folder, "classes/2027-05-15-0900.json")));
  await page.getByText("This class has no board yet").waitFor();
  const other = await page.context().newPage();
  for (const each of [page, other]) {
    await each.goto(`${gym.address}/classes/2027-05-15-0900`);
    await each.getByLabel("Minutes", { exact: true }).waitFor();
  }
  await other.getByLabel("Minutes", { exact: true }).fill("75");
  await other.getByRole("button", { name: "Save" }).click();
  await other.getByText("75 minutes").waitFor();
  await page.getByRole("combobox", { name: "Board" }).selectOption("sat-two-clocks");
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByText("75 minutes").waitFor();
  assert.deepEqual([kept(gym, "2027-05-15-0900").minutes, kept(gym, "2027-05-15-0900").board_id], [75, "sat-two-clocks"]);
  for (const each of [page, other]) await each.goto(`${gym.address}/classes/2027-05-15-0900`);
  await other.getByLabel("Minutes", { exact: true }).fill("50");
  await page.getByLabel("Minutes", { exact: true }).fill("45");
  await other.getByRole("button", { name: "Save" }).click();
  await other.getByText("50 minutes").waitFor();
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByRole("alert").getByText("somebody else changed the minutes", { exact: false }).waitFor();
  await page.getByRole("button", { name: "Keep mine" }).click();
  await page.getByText("45 minutes").waitFor();
  await settled(page);
  assert.equal(kept(gym, "2027-05-15-0900").minutes, 45);
});
