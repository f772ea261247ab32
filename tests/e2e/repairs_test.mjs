// What would help a class: looked for, taken by one act, undone by one, marked when the board is another.
import assert from "node:assert/strict";
import { ask, makeClass, ownersFlows, seriousFaults, settled } from "./support.mjs";

let gym, page;
const flow = ownersFlows((given) => {
  ({ gym, page } = given);
  page.setDefaultTimeout(60_000); // a search is a hundred rehearsals, and the machine may be busy
});

const help = () => page.getByRole("region", { name: "What would help" });
const proposals = () => help().getByRole("button", { name: "Take it" });
const keptText = async () => (await page.evaluate(async () => (await (await fetch("/api/boards/sat-two-clocks")).json()).text));

flow("on the board's page a proposal is taken into the text and out of it again, and a change of the board marks it", async () => {
  await page.goto(`${gym.address}/board/sat-two-clocks`);
  await proposals().first().waitFor();
  assert.ok((await proposals().count()) >= 1 && (await proposals().count()) <= 3);
  const lines = async () => await page.locator(".cm-line").allInnerTexts();
  const before = await lines();
  const chalked = await help().locator(".proposal code").first().innerText();
  assert.ok(!before.map((line) => line.trim()).includes(chalked));
  await proposals().first().click();
  await help().getByText("Taken.").waitFor();
  assert.ok((await lines()).map((line) => line.trim()).includes(chalked));
  await page.getByText("Not saved yet").waitFor();
  await help().getByRole("button", { name: "Undo it" }).click();
  await page.getByText("Saved", { exact: true }).waitFor();
  assert.deepEqual(await lines(), before);
  assert.equal(await proposals().first().isDisabled(), false);
  await page.locator(".cm-content").click();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\n5 min stretch");
  await help().getByText("worked out for the board and the class as they were").waitFor();
  assert.equal(await proposals().first().isDisabled(), true);
  await help().getByRole("button", { name: "Look again" }).click();
  await help().getByText("as they were").waitFor({ state: "detached" });
  assert.equal(await proposals().first().isDisabled(), false);
});

flow("doing nothing stands beside the proposals, and a search can be left", async () => {
  await page.goto(`${gym.address}/board/sat-two-clocks`);
  await proposals().first().waitFor();
  await help().getByText("Beside doing nothing").click();
  await help().getByRole("rowheader", { name: "as it stands" }).waitFor();
  const rows = await help().locator("details", { hasText: "Beside doing nothing" }).locator("tbody tr").count();
  assert.equal(rows, (await proposals().count()) + 1);
  await page.route("**/api/repairs", () => undefined); // an answer that never comes
  await page.getByRole("button", { name: "One fewer" }).first().click();
  await help().getByRole("button", { name: "Stop looking" }).click();
  await help().getByRole("button", { name: "Look again" }).waitFor();
  assert.equal(await help().getAttribute("aria-busy"), "false");
});

flow("on the class's page a proposal is written into the kept board, and taken out again", async () => {
  await page.goto(`${gym.address}/class/sat-24`);
  await proposals().first().waitFor();
  const before = await keptText();
  const words = await help().locator(".proposal-words").first().innerText();
  await proposals().first().click();
  await help().getByText("Taken.").waitFor();
  await help().getByText(words).first().waitFor();
  assert.notEqual(await keptText(), before);
  await help().getByRole("button", { name: "Undo it" }).click();
  await help().getByText("Taken.").waitFor({ state: "detached" });
  assert.equal(await keptText(), before);
});

flow("a class over its hour is told what to cut; where that is not enough, what to cut first", async () => {
  await page.goto(gym.address);
  const text = "LONG\nwarm-up 12 min\nPIECE A 25 min\nback squat 5x5\nPIECE B\nFor time, cap 25\n800 m run\n3 rounds\n20 push-ups\n20 box step-ups\n";
  await makeClass(page, { id: "too-long", board: "too-long", text, heads: 12 });
  const lasts = async (minutes) => {
    const { class: made, version } = await ask(page, "GET", "/api/classes/too-long");
    await ask(page, "PUT", "/api/classes/too-long", { class: { ...made, minutes }, version });
    await page.goto(`${gym.address}/class/too-long`);
  };
  await lasts(45);
  await help().locator(".proposal-words", { hasText: /^Cut: / }).waitFor();
  assert.equal(await help().getByText("The hour is too short").count(), 0);
  await lasts(15);
  await page.reload();
  await help().getByText(/^The hour is too short for this board: \d+ % of the runs end late/).waitFor();
  await help().getByText(/^Cut first: .*It gives \d+:\d\d;/).waitFor();
  await page.locator(".cuts li").first().waitFor();
  assert.equal(await help().getByText("Leave it as it is").count(), 0);
  assert.deepEqual(await seriousFaults(page), []);
});

flow("who has done the board before is told how it went", async () => {
  await page.goto(`${gym.address}/class/sat-24`);
  await settled(page);
  assert.equal(await page.getByRole("heading", { name: "Last time we did this" }).count(), 0);
  const changed = await page.evaluate(async () => {
    const { class: gymClass, version } = await (await fetch("/api/classes/wed-morning-9")).json();
    const body = JSON.stringify({ class: { ...gymClass, board_id: "everyday-twelve" }, version });
    return (await fetch("/api/classes/wed-morning-9", { method: "PUT", headers: { "Content-Type": "application/json" }, body })).status;
  });
  assert.equal(changed, 200);
  await page.goto(`${gym.address}/class/wed-morning-9`);
  const last = page.getByRole("region", { name: "Last time we did this" });
  await last.getByText(/\d+ scored/).first().waitFor();
});
