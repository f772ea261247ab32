// A class on the floor: arrivals, runners, scores, results, a member's page; a program that is killed in the middle.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { serveFile } from "./outage.mjs";
import { becomeOwner, cannotRun, newPage, openBrowser, seriousFaults } from "./support.mjs";

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };
let gym, browser, owner;

before(async () => {
  if (cannotRun) return;
  [gym, browser] = await Promise.all([serveFile(), openBrowser()]);
  const first = await newPage(browser);
  await becomeOwner(first, gym);
  owner = await first.context().storageState();
  await first.context().close();
});
after(async () => {
  await browser?.close();
  await gym?.stop();
});

/** A flow of the owner's phone; while the program is gone the browser complains about it, and that is fine. */
const flow = (name, body) =>
  test(name, { skip: cannotRun }, async () => {
    const page = await newPage(browser, { ...phone, storageState: owner });
    await body(page);
    const faults = page.faults.filter((each) => !/ERR_CONNECTION|ERR_SOCKET|ERR_EMPTY|ERR_INCOMPLETE|ERR_NETWORK/.test(each));
    await page.context().close();
    assert.deepEqual(faults, []);
  });

/** What the program keeps of the class. */
const scoresOf = (page, id) => page.evaluate(async (which) => (await fetch(`/api/classes/${which}/scores`)).json(), id);

flow("arrivals are ticked with one tap, told in action words, and the hour follows", async (page) => {
  await page.goto(`${gym.address}/arrivals/sat-24`);
  await page.getByText("0 here, 24 expected").waitFor();
  await page.getByRole("button", { name: /Hyun-ae Marlowe.*No weight on flat palms/ }).click();
  await page.getByText("1 here, 23 expected").waitFor();
  await page.getByRole("button", { name: "Late or not coming: Yusra Brandvoll" }).click();
  await page.getByRole("button", { name: "not coming", exact: true }).click();
  await page.getByText("1 here, 22 expected, 1 not coming").waitFor();
  await page.getByText(/^23 instead of 24, \d late:/).waitFor();
  await page.getByLabel("Somebody new at the door").fill("Ro Invented");
  await page.getByRole("button", { name: "Add" }).click();
  await page.getByRole("button", { name: /Ro Invented walked in/, pressed: true }).waitFor();
  await page.reload();
  await page.getByText("2 here, 22 expected, 1 not coming").waitFor();
  const small = await page.$$eval(".floor button, .floor input", (all) =>
    all.map((each) => each.getBoundingClientRect()).filter((box) => box.height > 0 && box.height < 48).length,
  );
  assert.equal(small, 0, "everything to tap is at least 48 px high");
});

flow("nobody's reason is on the floor, and the emergency card is one tap away", async (page) => {
  for (const view of ["arrivals", "runners", "scores", "results"]) {
    await page.goto(`${gym.address}/${view}/sat-24`);
    await page.getByRole("button", { name: "Emergency" }).click();
    await page.getByRole("dialog", { name: "Emergency" }).getByText(/Call the emergency number/).waitFor();
    await page.keyboard.press("Escape");
  }
});

flow("runners go out and come in with a tap each, and the screen says who is late", async (page) => {
  await page.clock.install();
  await page.goto(`${gym.address}/runners/sat-24`);
  await page.getByRole("heading", { name: "Out: 0 people" }).waitFor();
  await page.getByRole("button", { name: /Hyun-ae Marlowe back after/ }).click();
  await page.getByRole("heading", { name: "Out: 1 person" }).waitFor();
  await page.clock.fastForward("40:00");
  await page.getByRole("alert").getByText(/Hyun-ae Marlowe should be back by now/).waitFor();
  await page.getByRole("button", { name: /Hyun-ae Marlowe .* LATE/ }).click();
  await page.getByRole("heading", { name: "Out: 0 people" }).waitFor();
});

flow("a score is kept in five taps, asked about where nobody expects it, and corrected with who did it", async (page) => {
  await page.goto(`${gym.address}/scores/sat-24`);
  await page.getByRole("button", { name: /Hyun-ae Marlowe/ }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByText(/Forecast/).waitFor();
  const [first] = await dialog.getByRole("textbox").all();
  await first.fill("99");
  await dialog.getByRole("button", { name: /^Keep/ }).click();
  await dialog.getByRole("alert").getByText(/really/).waitFor();
  await dialog.getByRole("button", { name: "Cancel" }).click();
  await page.getByRole("button", { name: /Hyun-ae Marlowe/ }).click();
  await dialog.locator("fieldset").getByText("8", { exact: true }).click();
  await dialog.getByRole("button", { name: /^Keep/ }).click();
  await page.getByText("1 of ").waitFor();
  await page.getByText("on its way").waitFor({ state: "detached" });
  await page.getByRole("button", { name: /Hyun-ae Marlowe/ }).click();
  await dialog.getByText(/Kept: .* by Mira, today at/).waitFor();
  await dialog.locator('button[aria-pressed="true"][aria-label^="Load in kg"] + button').click(); // the hall's next
  await dialog.getByRole("button", { name: /^Keep/ }).click();
  await page.getByText("corrected").waitFor();
  const lines = await scoresOf(page, "sat-24");
  assert.equal(lines.length, 1);
  assert.equal(lines[0].effort, 8);
  assert.equal(lines[0].saved_by, "Mira");
});

test("a member sees their version, target and actions, and enters their score", { skip: cannotRun }, async () => {
  const page = await newPage(browser, { storageState: owner });
  await page.goto(`${gym.address}/accounts`);
  await page.getByRole("combobox", { name: /^As/ }).selectOption("person");
  await page.getByRole("combobox", { name: /^Person/ }).selectOption({ value: "a10" });
  await page.getByLabel("PIN").fill("4711");
  await page.getByRole("button", { name: "Let in" }).click();
  const link = await page.locator(".own-link").textContent();
  await page.context().close();
  const member = await newPage(browser, phone);
  await member.goto(link);
  await member.getByLabel("PIN").fill("4711");
  await member.getByRole("button", { name: "Open" }).click();
  await member.getByText("Target").first().waitFor();
  await member.getByText(/[Nn]o overhead/).first().waitFor();
  await member.getByText(/^Circuit of six stations, three laps/).waitFor();
  assert.equal(await member.getByText("After the hour").count(), 0, "nobody is asked about an hour that is to come");
  await member.getByRole("button", { name: "Enter my score" }).first().click();
  await member.getByRole("button", { name: /^Keep/ }).click();
  await member.getByRole("button", { name: /My score: .* Correct it/ }).waitFor();
  await member.getByLabel("Show me in lists by score").check();
  await member.reload();
  assert.equal(await member.getByLabel("Show me in lists by score").isChecked(), true);
  assert.deepEqual(await seriousFaults(member), []);
  assert.deepEqual(member.faults, []);
  await member.context().close();
});

/** Scores by the routes that a phone's queue uses, so that a test can enter many. */
const enter = (page, device, count) =>
  page.evaluate(
    async ([name, many]) => {
      const people = (await (await fetch("/api/classes/wed-morning-9/arrivals")).json()).people.map((each) => each.id);
      for (let i = 0; i < many; ++i) {
        const key = `${name}${String(i).padStart(3, "0")}`;
        const letter = {
          key, path: "/api/classes/wed-morning-9/scores", how: "POST", words: key, at: Date.now() - many + i, held: 0, timed: false, refused: null,
          body: { person: people[i % people.length], score: `${i + 100}`, done_as: name, key },
        };
        localStorage.setItem(`repwright.waiting.Mira.${key}`, JSON.stringify(letter));
      }
    },
    [device, count],
  );

test("60 entries from two phones and a killed program: nothing lost, nothing doubled", { skip: cannotRun }, async () => {
  const phones = await Promise.all(["one", "two"].map(() => newPage(browser, { ...phone, storageState: owner })));
  await Promise.all(phones.map((page) => page.goto(`${gym.address}/scores/wed-morning-9`)));
  // A slow network, so that the program is surely killed between two entries.
  for (const page of phones)
    await page.route("**/api/classes/*/scores", async (route) => {
      if (route.request().method() === "POST") await new Promise((done) => setTimeout(done, 100));
      await route.continue();
    });
  await Promise.all(phones.map((page, index) => enter(page, ["one", "two"][index], 30)));
  await Promise.all(phones.map((page) => page.reload()));
  await phones[0].waitForFunction(() => Object.keys(localStorage).filter((key) => key.startsWith("repwright.waiting")).length < 25);
  await gym.kill();
  await phones[0].getByText(/entries wait on this device/).waitFor();
  const left = await phones[0].evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("repwright.waiting")).length);
  assert.ok(left > 0, "the program was killed in the middle");
  await gym.start();
  for (const page of phones)
    await page.waitForFunction(
      () => Object.keys(localStorage).filter((key) => key.startsWith("repwright.waiting")).length === 0,
      null,
      { timeout: 60_000 },
    );
  const lines = await scoresOf(phones[0], "wed-morning-9");
  const entered = lines.filter((each) => ["one", "two"].includes(each.done_as)).map((each) => `${each.done_as} ${each.score}`).sort();
  const expected = ["one", "two"].flatMap((name) => Array.from({ length: 30 }, (_, i) => `${name} ${i + 100}`)).sort();
  assert.deepEqual(entered, expected);
  await Promise.all(phones.map((page) => page.context().close()));
});

flow("a coach's note waits on the phone while the program is gone, and is kept once", async (page) => {
  const id = "sat-24";
  await page.goto(`${gym.address}/scores/${id}`);
  await page.getByRole("button", { name: /Zofia Achterberg/ }).waitFor();
  await gym.kill();
  await page.getByRole("button", { name: /Zofia Achterberg/ }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByText("Version and note").click();
  await dialog.getByLabel("Note for the coaches").fill("grip taped");
  await dialog.getByText("9", { exact: true }).click();
  await dialog.getByRole("button", { name: /^Keep/ }).click();
  await page.getByText("2 entries wait on this device").waitFor();
  await page.reload().catch(() => undefined);
  await gym.start();
  // The browser may still be on its way to its own page that says that nobody answered.
  const scores = `${gym.address}/scores/${id}`;
  await page.goto(scores).catch(() => page.goto(scores));
  await page.waitForFunction(() => Object.keys(localStorage).filter((key) => key.startsWith("repwright.waiting")).length === 0, null, { timeout: 60_000 });
  const notes = await page.evaluate(async () => (await fetch("/api/notes")).json());
  assert.equal(notes.filter((each) => each.text === "grip taped").length, 1);
  const lines = (await scoresOf(page, id)).filter((each) => each.effort === 9);
  assert.equal(lines.length, 1);
});

flow("results say own bests first, and rank nobody who did not choose it", async (page) => {
  await page.goto(`${gym.address}/results/wed-morning-9`);
  await page.getByRole("heading", { level: 2 }).or(page.getByText("No scores yet.")).first().waitFor();
  assert.equal(await page.getByText("By score:").count(), 0);
});
