// One class from the door to the results: a TV, a coach's phone and two members' phones; the program is killed in the middle.
import assert from "node:assert/strict";
import { test } from "node:test";
import { serveFile } from "./outage.mjs";
import { becomeOwner, cannotRun, newPage, openBrowser } from "./support.mjs";

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** What the browser says while the program is gone is no fault of the page. */
const realFaults = (page) => page.faults.filter((each) => !/ERR_CONNECTION|ERR_SOCKET|ERR_EMPTY|ERR_INCOMPLETE|ERR_NETWORK/.test(each));
const waitingOn = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("repwright.waiting")).length);
const delivered = (page) =>
  page.waitForFunction(() => Object.keys(localStorage).filter((key) => key.startsWith("repwright.waiting")).length === 0, null, {
    timeout: 60_000,
  });
const asked = (page, path) => page.evaluate(async (at) => (await fetch(at)).json(), path);

/** A link that the owner's page made. */
const linkFor = async (page, account) =>
  page.evaluate(async (made) => {
    const answer = await fetch("/api/accounts", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(made) });
    return (await answer.json()).link;
  }, account);

async function memberPhone(browser, gym, link) {
  const page = await newPage(browser, phone);
  await page.goto(`${gym.address}/#person=${link}`);
  await page.getByLabel("PIN").fill("4711");
  await page.getByRole("button", { name: "Open" }).click();
  await page.getByText("Target").first().waitFor();
  return page;
}

test("a whole class, from arrivals to results, over a TV, a coach's phone and two members' phones, with an outage", { skip: cannotRun }, async (told) => {
  const [gym, browser] = await Promise.all([serveFile(), openBrowser()]);
  told.after(async () => {
    await browser.close();
    await gym.stop();
  });
  const coach = await newPage(browser, phone);
  await becomeOwner(coach, gym);
  const { next_class: id } = await asked(coach, "/api/gym");
  const wall = await newPage(browser, { viewport: { width: 1920, height: 1080 } });
  await wall.goto(`${gym.address}/#screen=${await linkFor(coach, { name: "The wall", role: "screen" })}`);
  await wall.getByRole("button", { name: "Board", pressed: true }).waitFor();
  const there = (await asked(coach, `/api/classes/${id}/arrivals`)).people;
  const ids = there.slice(0, 2).map((each) => each.id);
  const own = [];
  for (const person of ids) own.push(await memberPhone(browser, gym, await linkFor(coach, { name: `p-${person}`, role: "person", person, pin: "4711" })));

  // The door.
  const nameOf = (person) => there.find((each) => each.id === person).name;
  await coach.goto(`${gym.address}/arrivals/${id}`);
  for (const person of ids) {
    await coach.getByRole("button", { name: new RegExp(`^${nameOf(person)}`) }).first().click();
    await coach.getByRole("button", { name: new RegExp(`^${nameOf(person)}`), pressed: true }).first().waitFor();
  }
  await coach.getByText(/^2 here/).waitFor();

  // The clock: started in the hand, seen on the wall.
  await coach.goto(`${gym.address}/clock/${id}/remote`);
  await coach.getByRole("button", { name: "Start", exact: true }).click();
  await coach.getByText("This is the class of", { exact: false }).waitFor(); // the demo's classes are of other days
  await coach.getByRole("button", { name: "Yes, start it" }).click();
  await wall.getByRole("button", { name: "Clock", pressed: true }).waitFor();

  // The program is killed: the wall goes on, and what is entered waits.
  await gym.kill();
  await wall.getByText(/The clock goes on alone/).waitFor();
  const figure = () => wall.locator(".clock-wall .figure").first().textContent();
  const before = await figure();
  for (const page of own) {
    await page.getByRole("button", { name: "Enter my score" }).first().click();
    await page.getByRole("button", { name: /^Keep/ }).click();
    await page.locator(".efforts").last().getByText("7", { exact: true }).click();
    await page.getByLabel("A word to the coaches").fill("the bar slipped");
    await page.getByRole("button", { name: "Tell" }).click();
    await page.getByText(/entries wait on this device/).waitFor();
    assert.equal(await waitingOn(page), 3);
  }
  // The wall goes on alone.
  await wall.waitForFunction((was) => document.querySelector(".clock-wall .figure").textContent !== was, before);
  await gym.start();
  await Promise.all(own.map(delivered));

  const scores = (await asked(coach, `/api/classes/${id}/scores`)).filter((each) => ids.includes(each.person));
  assert.deepEqual(scores.map((each) => each.person).sort(), [...ids].sort(), "each score is there once");
  const efforts = (await asked(coach, `/api/classes/${id}/effort`)).filter((each) => ids.includes(each.person));
  assert.deepEqual(efforts.map((each) => each.effort), [7, 7]);
  const notes = (await asked(coach, "/api/notes")).filter((each) => each.text === "the bar slipped");
  assert.deepEqual(notes.map((each) => each.person).sort(), [...ids].sort(), "each note is there once");

  // The end: the results come to the wall by themselves.
  await coach.reload();
  await coach.getByRole("button", { name: "End the clock…" }).click();
  await coach.getByRole("button", { name: "Yes, end the clock" }).click();
  await wall.getByRole("heading", { name: "Results" }).waitFor();
  for (const person of ids) await wall.getByText(nameOf(person)).first().waitFor();
  for (const page of [coach, wall, ...own]) assert.deepEqual(realFaults(page), []);
});
