// The house's answers to what chalk leaves open, and the trail that the owner reads.
import assert from "node:assert/strict";
import { test } from "node:test";
import { cannotRun, newPage, seriousFaults, sharedGym } from "./support.mjs";

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given), { inFile: true });

test("the house decides how chalk is meant, and the next board is read by it; the trail says who did it", { skip: cannotRun }, async () => {
  const page = await newPage(browser, { storageState: owner });
  const read = (text) =>
    page.evaluate(
      async (chalked) =>
        (await (await fetch("/api/read", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ text: chalked }) })).json()).reading.join(" "),
      text,
    );
  await page.goto(gym.address);
  await page.getByRole("navigation", { name: "Views" }).getByRole("link", { name: "House" }).click();
  await page.getByRole("group", { name: "A load without a unit: 12 swings 24" }).getByLabel("kilograms").waitFor();
  assert.match(await read("3 RFT\n12 swings 24"), /24 kg/);
  await page.getByLabel("pounds").check();
  await page.getByRole("button", { name: "Add a word" }).click();
  await page.getByLabel("Chalked as").fill("Willow");
  await page.getByLabel("Means").fill("no such thing");
  const bar = page.getByRole("region", { name: "Changes of the house" });
  await bar.getByRole("button", { name: "Save" }).click();
  await bar.getByRole("alert").getByText("the catalogue knows no movement 'no such thing'", { exact: false }).waitFor();
  await page.getByLabel("Means").fill("run");
  assert.deepEqual(await seriousFaults(page), []);
  await bar.getByRole("button", { name: "Save" }).click();
  await bar.waitFor({ state: "detached" });
  assert.match(await read("3 RFT\n12 swings 24"), /24 lb|10\.\d+ kg/);
  assert.match(await read("3 RFT\n400 m willow"), /run/);
  await page.getByLabel("kilograms").check();
  await bar.getByRole("button", { name: "Leave as it was" }).click();
  assert.equal(await page.getByLabel("pounds").isChecked(), true);
  await page.goto(`${gym.address}/accounts`);
  await page.getByRole("link", { name: "The trail" }).click();
  const newest = page.getByRole("region", { name: "Changes" }).getByRole("row").nth(1);
  assert.match(await newest.innerText(), /Mira\s+house/);
  assert.deepEqual(await seriousFaults(page), []);
  await page.context().close();
  assert.deepEqual(page.faults, []);
});
