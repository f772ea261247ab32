// The board's page: write with mistakes, mend them by hints, rehearse, ask what if, save beside somebody else.
import assert from "node:assert/strict";
import { ownersFlows } from "./support.mjs";

// One gym for all: what a flow changes of it, no other looks at.
let gym, page;
const flow = ownersFlows((given) => ({ gym, page } = given));

const text = () => page.locator(".cm-content");
const lines = async () => await page.locator(".cm-line").allInnerTexts();
const lanes = () => page.getByRole("listbox", { name: "One lane per person over the class" }).getByRole("option");
const open = async (path) => {
  await page.goto(gym.address + path);
  await text().waitFor();
};
const rehearsed = async (people) => await page.locator(".lane-head").getByText(`${people} people`).waitFor();

flow("a board with mistakes is mended by its hints and then rehearsed", async () => {
  await open("/board");
  await text().click();
  await page.keyboard.type("AMRAP 12:75\n9 pull-ups\n12 swngs 24/16\n10 wall bals\n");
  await page.getByText("A board with errors is not rehearsed").waitFor();
  const list = page.locator(".doubt-list");
  await list.getByText("1 error, 1 warning, 3 notes").waitFor();
  await list.getByRole("button", { name: "13:15" }).click();
  await list.getByRole("button", { name: "wall ball" }).click();
  await list.getByRole("button", { name: "swing", exact: true }).click();
  await list.getByRole("button", { name: "24/16 kg" }).click();
  await list.getByText("1 note").waitFor();
  assert.deepEqual((await lines()).slice(0, 4), ["AMRAP 13:15", "9 pull-ups", "12 swing 24/16 kg", "10 wall ball"]);
  await lanes().first().waitFor();
  assert.equal(await page.getByText("A board with errors is not rehearsed").count(), 0);
});

flow("one hint below a line after another is pressed, each after the reading of the one before", async () => {
  await open("/board");
  await text().click();
  await page.keyboard.type("5 rounds for time\n400 m rum\n12 pullups\n16 wall bals 9/6\n");
  const below = (name) => page.locator(".doubt-repair").getByText(name, { exact: true });
  for (const [hint, line] of [["running", "400 m running"], ["wall ball", "16 wall ball 9/6"], ["9/6 kg", "16 wall ball 9/6 kg"]]) {
    await below(hint).click();
    await page.waitForFunction((wanted) => document.querySelector(".board-text").shadowRoot.querySelector(".cm-content").innerText.includes(wanted), line);
    await below(hint).waitFor({ state: "detached" }); // it is read again
  }
  assert.deepEqual((await lines()).slice(0, 4), ["5 rounds for time", "400 m running", "12 pullups", "16 wall ball 9/6 kg"]);
});

flow("a question of the house is answered by one key, and undone", async () => {
  await open("/board");
  await text().click();
  await page.keyboard.type("3 RFT\n12 swings 24");
  await page.locator(".doubt-list").getByText("1 note").waitFor();
  await page.keyboard.press("Alt+Digit2");
  assert.deepEqual(await lines(), ["3 RFT", "12 swings 24 lb"]);
  await page.keyboard.press("Control+z");
  assert.deepEqual(await lines(), ["3 RFT", "12 swings 24"]);
});

flow("completion takes Tab, or Enter after an arrow, and never a plain Enter", async () => {
  await open("/board");
  const offered = page.locator(".cm-tooltip-autocomplete");
  await text().click();
  await page.keyboard.type("3 RFT\n10 burp");
  await offered.waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.type("\n8 push");
  await offered.waitFor();
  await page.keyboard.press("Enter");
  await page.keyboard.type("15 sit");
  await offered.waitFor();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  assert.deepEqual(await lines(), ["3 RFT", "10 burpees", "8 push", "15 sit-ups"]);
});

flow("19 heads, rain and a broken place are one act each", async () => {
  await open("/board/sat-two-clocks");
  await rehearsed(24);
  await page.getByLabel("Heads", { exact: true }).fill("19");
  await rehearsed(19);
  assert.equal(await lanes().count(), 19);
  await page.getByRole("button", { name: "as booked" }).click();
  await rehearsed(24);
  const further = page.locator(".findings .further > summary");
  await further.click();
  const closed = page.locator("button.finding", { hasText: /route is closed/ });
  assert.equal(await closed.count(), 0);
  await page.getByRole("button", { name: "Rain" }).click();
  await closed.first().waitFor();
  await page.getByLabel("Broken").selectOption({ label: "Pull-up bar place" });
  await page.getByText("7 x Pull-up bar place").first().waitFor({ state: "attached" });
  await page.getByRole("button", { name: "One more out" }).click();
  await page.getByText("6 x Pull-up bar place").first().waitFor({ state: "attached" });
});

flow("a finding leads to its words and its lanes; a lane tells its numbers by keyboard", async () => {
  await open("/board/sat-two-clocks");
  await rehearsed(24);
  await page.getByText(/^\d+ more$/).click();
  await page.locator("button.finding", { hasText: "comes back from the run" }).first().click();
  await page.locator(".lane-lit").first().waitFor();
  await page.locator("button.finding", { hasText: "Pull-up bar place" }).click();
  await page.locator(".lit-line").waitFor();
  assert.match(await page.locator(".lit-line").innerText(), /hanging knee raises|pull-ups/);
  await lanes().first().focus();
  await page.keyboard.press("ArrowDown");
  const second = await lanes().nth(1).locator(".lane-name").innerText();
  await page.getByRole("heading", { level: 3, name: second }).waitFor();
  assert.match(await page.locator(".readout").innerText(), /limited by/);
  await page.getByRole("button", { name: "As a table" }).click();
  await page.getByRole("rowheader", { name: second }).waitFor();
});

flow("tidy is one act and undone by one", async () => {
  await open("/board");
  await text().click();
  await page.keyboard.type("5 rft cap 18\n15 kbs 24/16 kg");
  await page.getByRole("button", { name: "Tidy", exact: true }).click();
  await page.getByRole("button", { name: "Undo tidy" }).waitFor();
  assert.equal((await lines())[0], "5 rounds for time, cap 18 min");
  await page.getByRole("button", { name: "Undo tidy" }).click();
  assert.deepEqual(await lines(), ["5 rft cap 18", "15 kbs 24/16 kg"]);
});

flow("a draft survives a reload, is saved under a name, and stands on the wall", async () => {
  await open("/board");
  await text().click();
  await page.keyboard.type("Thursday, 60 min\n3 RFT\n9 burpees");
  await page.getByText("A new board; kept in this browser").waitFor();
  await page.reload();
  await text().getByText("9 burpees").waitFor();
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByRole("button", { name: "Save as thursday-60-min" }).click();
  await page.waitForURL("**/board/thursday-60-min");
  await page.getByText("Saved", { exact: true }).waitFor();
  await page.getByRole("link", { name: "For the members" }).click();
  await page.getByRole("heading", { name: "Thursday, 60 min" }).waitFor();
  await page.getByText("Stop and seek medical care").waitFor();
  assert.match(await page.locator(".wall-text").innerText(), /9 burpees/);
});

flow("what somebody else saved meanwhile is shown beside, and nothing is lost", async () => {
  await open("/board/everyday-twelve");
  await text().click();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\n5 burpees");
  const theirs = await page.evaluate(async () => {
    const kept = await (await fetch("/api/boards/everyday-twelve")).json();
    const changed = await fetch("/api/boards/everyday-twelve", {
      method: "PUT",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ text: "AMRAP 12\n7 squats", version: kept.version }),
    });
    return changed.status;
  });
  assert.equal(theirs, 200);
  await page.getByRole("button", { name: "Save", exact: true }).click();
  const both = page.getByRole("alertdialog");
  await both.getByText("7 squats").waitFor();
  await both.getByText("5 burpees").waitFor();
  await both.getByRole("button", { name: "Go on with yours" }).click();
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText("Saved", { exact: true }).waitFor();
  assert.ok((await lines()).includes("5 burpees"));
});

flow("a program that is gone is said, and the text is kept", async () => {
  page.expected = [/ERR_CONNECTION|ERR_INTERNET|Failed to load/];
  await open("/board");
  await page.route("**/api/**", (route) => route.abort("connectionrefused"));
  await text().click();
  await page.keyboard.type("3 RFT\n9 burpees");
  await page.getByRole("alert").getByText("The program does not answer").waitFor();
  await page.unroute("**/api/**");
  await lanes().first().waitFor();
  assert.equal(await page.getByText("The program does not answer").count(), 0);
  assert.deepEqual(await lines(), ["3 RFT", "9 burpees"]);
});

flow("a board of free text, and an empty one, say that there is nothing to rehearse", async () => {
  await open("/board");
  await page.getByText("Chalk the session as on the wall").waitFor();
  await text().click();
  await page.keyboard.type("see you at the canal");
  await page.getByText("Nothing to rehearse yet").waitFor();
});
