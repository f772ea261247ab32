// What a coach taps with cold hands: scores, corrections, the clock in the hand, and who stands where.
import assert from "node:assert/strict";
import { join } from "node:path";
import { test } from "node:test";
import { ask, cannotRun, clockTo, makeClass, newPage, pictures, seriousFaults, settled, sharedGym } from "./support.mjs";

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };
let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given), { inFile: true });

/** A flow of the owner on a phone, or on a screen of another size. */
const flow = (name, body, options = phone) =>
  test(name, { skip: cannotRun }, async () => {
    const page = await newPage(browser, { ...options, storageState: owner });
    await body(page);
    const faults = page.faults;
    await page.context().close();
    assert.deepEqual(faults, []);
  });

flow("scores open on the piece that runs; one tap for a pair is taken back with one", async (page) => {
  await page.goto(gym.address);
  await clockTo(page, "tue-pairs-13", ({ kind, name }) => kind === "work" && name === "Pairs");
  await page.goto(`${gym.address}/scores/tue-pairs-13`);
  await page.getByRole("button", { name: "Pairs", pressed: true }).waitFor();
  await page.getByText("In pairs for time, cap 22 minutes").waitFor();
  await page.getByText("By the clock of the class").waitFor();
  await page.getByRole("button", { name: /^Yusra Brandvoll/ }).click();
  await page.getByText("2 of 13 have a score").waitFor();
  const undo = page.getByRole("button", { name: /^Undo/ });
  assert.equal(await undo.count(), 1);
  await page.getByText(/Yusra Brandvoll and Teodor Wąsikowicz: /).waitFor();
  const bar = await page.locator(".undo > div").boundingBox();
  const views = await page.locator(".views").boundingBox();
  assert.ok(bar.y + bar.height <= views.y, "the bar stands above the row of views");
  await page.screenshot({ path: join(pictures, "scores-undo-390.png") });
  await undo.click();
  await page.getByText("0 of 13 have a score").waitFor();
  assert.deepEqual(await ask(page, "GET", "/api/classes/tue-pairs-13/scores"), []);
});

flow("any rounds and reps are five taps, and a correction says what stood there before, by whom and when", async (page) => {
  await page.goto(`${gym.address}/scores/sat-24`);
  await page.getByRole("button", { name: "PIECE A" }).click();
  let taps = 0;
  const tap = async (what) => {
    await what.click();
    ++taps;
  };
  const dialog = page.getByRole("dialog");
  const rounds = dialog.getByRole("group", { name: "Full rounds" });
  const reps = dialog.getByRole("group", { name: "Reps of the next round" });
  await tap(page.getByRole("button", { name: /^Ngozi Halloran/ }));
  await tap(rounds.getByRole("button", { name: "Full rounds: 3", exact: true }));
  await tap(reps.getByRole("button", { name: /tens 10/ }));
  await tap(reps.getByRole("button", { name: /rest 2$/ }));
  await settled(page);
  await page.screenshot({ path: join(pictures, "score-entry-390.png") });
  assert.deepEqual(await seriousFaults(page), []);
  for (const each of await dialog.locator("button").all()) assert.ok((await each.boundingBox()).height >= 48, await each.textContent());
  await tap(dialog.getByRole("button", { name: "Keep 3+12" }));
  assert.equal(taps, 5);
  await page.getByRole("button", { name: /^Ngozi Halloran.*3\+12/ }).waitFor();
  await page.getByText("on its way").waitFor({ state: "detached" });
  await page.getByRole("button", { name: /^Ngozi Halloran/ }).click();
  await dialog.getByText(/^Kept: 3\+12 by Mira, today at \d\d:\d\d\.$/).waitFor();
  await rounds.getByRole("button", { name: "Full rounds: 2", exact: true }).click();
  await dialog.getByRole("button", { name: "Keep 2+12" }).click();
  await page.getByRole("button", { name: /^Ngozi Halloran.*2\+12 corrected/ }).click();
  await dialog.getByText(/^Kept: 2\+12 by Mira/).waitFor();
  await dialog.getByText(/^Before that: 3\+12 by Mira, today at \d\d:\d\d\.$/).waitFor();
});

flow("after the cap a tap on a name begins with the reps that were done, and five taps keep them", async (page) => {
  await page.goto(gym.address);
  await makeClass(page, { id: "capped", board: "capped", text: "3 rounds for time, cap 12\n20 push-ups\n15 box step-ups\n", heads: 6 });
  await page.goto(`${gym.address}/scores/capped`);
  await page.getByLabel("or it has been running for").fill("12:30");
  await page.getByRole("button", { name: "Go", exact: true }).click();
  let taps = 0;
  const tap = async (what) => {
    await what.click();
    ++taps;
  };
  const dialog = page.getByRole("dialog");
  await tap(page.locator(".names button").first());
  assert.equal(await dialog.getByLabel("Stopped by the cap of 12:00").isChecked(), true);
  await tap(dialog.getByRole("button", { name: "Reps done: hundreds 0", exact: true }));
  await tap(dialog.getByRole("button", { name: "Reps done: tens 30", exact: true }));
  await tap(dialog.getByRole("button", { name: "Reps done: rest 2", exact: true }));
  await settled(page);
  assert.deepEqual(await seriousFaults(page), []);
  await page.screenshot({ path: join(pictures, "score-capped-390.png") });
  await tap(dialog.getByRole("button", { name: "Keep cap, 0+32" }));
  assert.equal(taps, 5);
  await page.locator(".names button").first().getByText("cap, 0+32").waitFor();
});

flow("more than the piece holds is asked about; loads keep their halves; versions are words", async (page) => {
  await page.goto(`${gym.address}/scores/wed-19-for-12`);
  await page.getByText("about 22.5 kg").first().waitFor();
  assert.equal(await page.getByText(/about 23 kg/).count(), 0);
  await page.getByRole("button", { name: "Cond" }).click();
  await page.getByText("Every 3 minutes, seven times").waitFor();
  await page.getByRole("button", { name: /^Yusra Brandvoll/ }).click();
  const dialog = page.getByRole("dialog");
  const reps = dialog.getByRole("textbox", { name: "Reps", exact: true });
  await reps.fill("150");
  await dialog.getByRole("button", { name: "Keep 150" }).click();
  await dialog.getByRole("alert").getByText("The piece holds 140, really 150?").waitFor();
  await reps.fill("140");
  await dialog.getByRole("button", { name: "Keep 140" }).click();
  await page.getByRole("button", { name: /^Yusra Brandvoll.*run, pull-up, push-up, box step-up/ }).waitFor();
});

flow("many groups of a waterfall start leave Pause where the thumb is", async (page) => {
  await page.goto(gym.address);
  await makeClass(page, { id: "waterfall", board: "waterfall", text: "For time, cap 15, start every 20 s\n400 m run\n30 push-ups\n20 box step-ups\n", heads: 24 });
  await clockTo(page, "waterfall", ({ kind }) => kind === "work");
  await page.goto(`${gym.address}/clock/waterfall/remote`);
  await page.getByText(/Group \d+ goes in .*, \d+ more after it/).waitFor();
  await settled(page);
  const pause = await page.getByRole("button", { name: "Pause", exact: true }).boundingBox();
  const [emergency, state] = await Promise.all(
    [page.getByRole("button", { name: "Emergency" }), page.getByRole("heading", { level: 1 })].map((each) => each.boundingBox()),
  );
  assert.ok(emergency.height >= 48, `Emergency is ${emergency.height} high`);
  assert.ok(emergency.y < state.y + state.height && state.y < emergency.y + emergency.height, "Emergency has no row of its own");
  assert.ok(pause.y - (emergency.y + emergency.height) >= 96, "a thumb on Pause does not meet Emergency");
  assert.ok(pause.y + pause.height < 844 - 56, `Pause ends at ${pause.y + pause.height}`);
  await page.screenshot({ path: join(pictures, "remote-waterfall-390.png") });
});

flow("stretches are folded by part, each with a name of its own, and all is high enough to tap", async (page) => {
  await page.goto(`${gym.address}/clock/wed-morning-9/remote`);
  await page.getByRole("button", { name: "Start somewhere else" }).click();
  await page.locator(".clock-stretches summary").first().waitFor();
  const shown = await page.locator(".clock-stretches li > .act:visible").count();
  assert.ok(shown > 5 && shown < 20, `${shown} stretches stand open`);
  for (const each of await page.locator(".clock-stretches summary").all()) await each.click();
  const names = await page.locator(".clock-stretches .act").evaluateAll((all) => all.map((each) => each.getAttribute("aria-label")));
  assert.ok(names.length > 40);
  assert.ok(names.every((name) => /^From here: ./.test(name)), names.join("; "));
  assert.deepEqual(names.filter((name, index) => names.indexOf(name) !== index), [], "each is named once");
  const low = await page.$$eval(".clock-remote button, .clock-remote summary", (all) =>
    all.filter((each) => { const { height } = each.getBoundingClientRect(); return height > 0 && height < 48; }).map((each) => each.textContent),
  );
  assert.deepEqual(low, [], "everything to tap is at least 48 px high");
  await page.screenshot({ path: join(pictures, "remote-stretches-390.png"), fullPage: true });
});

flow("coaches see who is in which heat and pair before the class", async (page) => {
  await page.goto(gym.address);
  await makeClass(page, { id: "two-heats", board: "two-heats", text: "For time, cap 12, heats 2\n400 m run\n30 push-ups\n", heads: 8 });
  await page.goto(`${gym.address}/clock/two-heats/remote`);
  const heats = page.getByRole("region", { name: "For time" });
  await heats.getByRole("heading", { name: "Heat 2" }).waitFor();
  assert.equal(await heats.getByRole("listitem").count(), 8);
  await page.goto(`${gym.address}/arrivals/tue-pairs-13`);
  await page.getByText("Who stands where").click();
  const pairs = page.getByRole("region", { name: "Pairs" });
  await pairs.getByText("Yusra Brandvoll + Teodor Wąsikowicz").waitFor();
  assert.equal(await pairs.getByRole("listitem").count(), 6, "13 people are five pairs and a three");
  await settled(page);
  await page.screenshot({ path: join(pictures, "arrivals-pairs-390.png"), fullPage: true });
  assert.deepEqual(await seriousFaults(page), []);
});

flow(
  "the wall says who works together before the pairs begin, and who goes in the next heat",
  async (page) => {
    await page.goto(gym.address);
    await clockTo(page, "tue-pairs-13", ({ kind, name }) => kind === "part" && name.startsWith("Change"));
    await page.goto(`${gym.address}/clock/tue-pairs-13`);
    const lines = () => page.locator(".wall-page li").allTextContents();
    await page.locator(".wall-page li", { hasText: "Pairs: Yusra + Teodor" }).waitFor({ state: "attached" });
    assert.equal((await lines()).filter((line) => line.startsWith("Pairs: ")).length, 6);
    await page.screenshot({ path: join(pictures, "wall-pairs-1920.png") });
    await clockTo(page, "waterfall", ({ kind }) => kind === "count-in");
    await page.goto(`${gym.address}/clock/waterfall`);
    await page.locator(".wall-page li", { hasText: /^Groups 21 to 24: / }).waitFor({ state: "attached" });
    await page.screenshot({ path: join(pictures, "wall-groups-1920.png") });
    await clockTo(page, "two-heats", ({ kind, heat }) => kind === "change" && heat === 1);
    await page.goto(`${gym.address}/clock/two-heats`);
    await page.locator(".wall-page li", { hasText: /^Heat 2: / }).first().waitFor({ state: "attached" });
    assert.equal((await lines()).filter((line) => line.startsWith("Heat 1: ")).length, 0);
    await page.screenshot({ path: join(pictures, "wall-heats-1920.png") });
  },
  { viewport: { width: 1920, height: 1080 } },
);
