// What is proposed beside the findings: who does what, the warm-up, what to cut, and a member's class away from the gym.
import assert from "node:assert/strict";
import { join } from "node:path";
import { newPage, ownersFlows, pictures, seriousFaults, settled } from "./support.mjs";

let gym, page;
const flow = ownersFlows((given) => {
  ({ gym, page } = given);
  page.setDefaultTimeout(60_000); // a fit is hundreds of rehearsals, and the machine may be busy
});

const section = (name) => page.getByRole("region", { name });
const fits = () => section("What each does");
const rows = () => fits().locator("tbody tr");

/** What axe finds and pictures of the page, in light and dark; and nothing is wider than the screen. */
async function looked(on, name) {
  for (const colorScheme of ["light", "dark"]) {
    await on.emulateMedia({ colorScheme });
    await on.locator(`[data-theme=${colorScheme}]`).waitFor();
    const { width } = on.viewportSize();
    await on.screenshot({ path: join(pictures, `${name}-${width}-${colorScheme}.png`), fullPage: true });
    assert.deepEqual(await seriousFaults(on), []);
  }
  assert.ok((await on.evaluate(() => document.documentElement.scrollWidth - innerWidth)) <= 0);
}

flow("a repair is taken and undone, then everybody's version is worked out, and a change of the board marks it", async () => {
  await page.goto(`${gym.address}/board/sat-two-clocks`);
  const help = section("What would help");
  await help.getByRole("button", { name: "Take it" }).first().click();
  await help.getByRole("button", { name: "Undo it" }).click();
  await page.getByText("Saved", { exact: true }).waitFor();
  await fits().getByRole("button", { name: "Fit the board to the people" }).focus();
  await page.keyboard.press("Enter");
  await rows().first().waitFor();
  assert.equal(await rows().count(), 48); // two pieces with an intent, 24 people
  await fits().getByRole("table", { name: /^PIECE A: 4 rounds or more/ }).waitFor();
  await fits().getByRole("button", { name: "Copy who does what" }).click();
  await fits().getByText(/Copied\.|does not copy/).waitFor();
  await page.locator(".cm-content").click();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\n5 min stretch");
  await fits().getByText("worked out for the board and the class as they were").waitFor();
  await fits().getByRole("button", { name: "Look again" }).click();
  await fits().getByText("as they were").waitFor({ state: "detached" });
  assert.equal(await rows().count(), 48);
});

flow("the board's page with all advice has nothing serious at three sizes, and the table fits a tablet", async () => {
  for (const viewport of [{ width: 1440, height: 900 }, { width: 820, height: 1180 }, { width: 390, height: 844 }]) {
    await page.setViewportSize(viewport);
    await page.goto(`${gym.address}/board/sat-two-clocks`);
    await fits().getByRole("button", { name: "Fit the board to the people" }).click();
    await rows().first().waitFor();
    await section("The warm-up").getByRole("button", { name: "Choose a warm-up" }).click();
    await section("The warm-up").locator("li").first().waitFor();
    await section("What to cut, and the kit").getByRole("button", { name: "Look what to cut first" }).click();
    await section("What to cut, and the kit").locator("li").first().waitFor();
    await settled(page);
    const table = await fits().getByRole("table").first().boundingBox();
    assert.ok(table.x >= 0 && table.x + table.width <= viewport.width);
    for (const button of await fits().getByRole("button").all()) assert.ok((await button.boundingBox()).height >= 48);
    await looked(page, "advice");
  }
});

flow("the class's page shows its warm-up drill by drill, also in the bar of the hour, and what to cut", async () => {
  await page.goto(`${gym.address}/class/sat-24`);
  await section("The warm-up").locator("li").first().waitFor();
  const drills = await section("The warm-up").locator(".drills li").count();
  assert.ok(drills >= 3);
  assert.equal(await page.locator(".class-bar .drill").count(), drills);
  const cut = section("What to cut, and the kit");
  await cut.getByRole("button", { name: "Look what to cut first" }).click();
  await cut.locator(".cuts li").first().getByText(/gives \d+:\d\d/).waitFor();
  await cut.getByText(/^Before /).first().waitFor();
});

flow("a search that finds nothing says why, and can be asked again", async () => {
  await page.goto(`${gym.address}/board/sat-two-clocks`);
  await page.route("**/api/fit", (route) =>
    route.fulfill({ status: 503, contentType: "application/json", body: JSON.stringify({ error: { text: "busy: ask again in a moment", line: null, column: null, field: null } }) }),
  );
  page.expected = [/status of 503/];
  await fits().getByRole("button", { name: "Fit the board to the people" }).click();
  await fits().getByRole("alert").waitFor();
  await page.unroute("**/api/fit");
  await fits().getByRole("button", { name: "Fit the board to the people" }).click();
  await rows().first().waitFor();
  assert.equal(await fits().getByRole("alert").count(), 0);
});

flow("a member who cannot come reads and copies their class for a quiet room", async () => {
  await page.goto(`${gym.address}/accounts`);
  await page.getByRole("combobox", { name: /^As/ }).selectOption("person");
  await page.getByRole("combobox", { name: /^Person/ }).selectOption({ value: "a07" });
  await page.getByLabel("PIN").fill("4711");
  await page.getByRole("button", { name: "Let in" }).click();
  const link = await page.locator(".own-link").textContent();
  for (const viewport of [{ width: 390, height: 844 }, { width: 820, height: 1180 }]) {
    const member = await newPage(page.context().browser(), { viewport });
    member.setDefaultTimeout(60_000);
    await member.goto(link);
    await member.getByLabel("PIN").fill("4711");
    await member.getByRole("button", { name: "Open" }).click();
    await member.getByText("I cannot come").click();
    const away = member.locator(".away");
    await away.getByRole("button", { name: "Copy the text to send" }).waitFor();
    await away.getByLabel("Quiet: people live below").check();
    await away.getByLabel("Minutes").selectOption("30");
    await settled(member);
    assert.match(await away.locator(".chalk").innerText(), /\d/);
    await away.getByRole("button", { name: "Copy the text to send" }).click();
    await away.getByText(/Copied\.|does not copy/).waitFor();
    await looked(member, "away");
    assert.deepEqual(member.faults, []);
    await member.context().close();
  }
});
