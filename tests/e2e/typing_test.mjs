// How long after a key the doubt below its line is there: measured and printed, asserted is only that it comes.
import assert from "node:assert/strict";
import { test } from "node:test";
import { cannotRun, newPage, settled, sharedGym } from "./support.mjs";

let gym, browser, owner;
sharedGym((given) => ({ gym, browser, owner } = given));

const keys = 30;

test("every key on the demo's board is answered by what was understood of it", { skip: cannotRun }, async (told) => {
  const page = await newPage(browser, { storageState: owner });
  await page.goto(`${gym.address}/board/sat-two-clocks`);
  await settled(page);
  // A word that nobody knows and its mending by turns: each key puts a doubt up or takes it away.
  await page.locator(".cm-line", { hasText: "sit-ups" }).click();
  await page.keyboard.press("End");
  await page.evaluate(() => {
    const root = document.querySelector(".board-text").shadowRoot;
    const doubts = () => root.querySelectorAll(".under-warning, .under-error").length;
    globalThis.answers = [];
    let pressed = null;
    let before = 0;
    root.addEventListener("keydown", () => {
      pressed = performance.now();
      before = doubts();
    }, true);
    new MutationObserver(() => {
      if (pressed === null || doubts() === before) return;
      const since = pressed;
      pressed = null;
      requestAnimationFrame(() => globalThis.answers.push(performance.now() - since));
    }).observe(root, { subtree: true, childList: true, attributes: true });
  });
  for (let key = 1; key <= keys; ++key) {
    await page.keyboard.press(key % 2 ? "z" : "Backspace");
    await page.waitForFunction((wanted) => globalThis.answers.length >= wanted, key, { polling: 10 });
  }
  const answers = (await page.evaluate(() => globalThis.answers)).sort((a, b) => a - b);
  const at = (share) => answers[Math.min(answers.length - 1, Math.floor(share * answers.length))].toFixed(1);
  told.diagnostic(`from key to doubt over ${keys} keys: ${at(0.5)} ms in the middle, ${at(0.9)} ms for one in ten`);
  assert.equal(answers.length, keys);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});
