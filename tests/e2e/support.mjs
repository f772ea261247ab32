// What the tests of the whole program share: the demo gym served on a free port, and Debian's Chromium.
import assert from "node:assert/strict";
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, afterEach, before, beforeEach, test } from "node:test";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
const require = createRequire(join(root, "web/package.json"));
export const { chromium } = require("playwright-core");
export const axeSource = require.resolve("axe-core/axe.min.js");

const program = process.env.REPWRIGHT ?? join(root, "build/dev/repwright");
const browserPath = process.env.CHROMIUM ?? "/usr/bin/chromium";

/** Why these tests cannot run here, or false. */
export const cannotRun =
  (!existsSync(browserPath) && `no browser at ${browserPath}`) ||
  (!existsSync(program) && "repwright is not built") ||
  (!existsSync(join(root, "build/web/index.html")) && "the page is not built");

/** Where pictures of every page go; looked at by people. */
export const pictures = join(root, "build/pictures");
mkdirSync(pictures, { recursive: true });

/** Gives the demo's Saturday so many people: those of the demo again and again, each with a name of its own. */
function fill(gym, heads) {
  const [header, ...rows] = readFileSync(join(gym, "people.csv"), "utf8").trim().split("\n");
  const split = rows.map((row) => /^([^,]*),([^,]*),(.*)$/.exec(row).slice(1));
  const last = split.map(([, name]) => name.split(" ").slice(1).join(" "));
  const crowd = Array.from({ length: heads }, (_, index) => {
    const [id, name, rest] = split[index % split.length];
    if (index < split.length) return [id, name, rest];
    const turn = Math.floor(index / split.length);
    return [`b${index}`, `${name.split(" ")[0]} ${last[(index + 5 * turn) % last.length]}`, rest];
  });
  writeFileSync(join(gym, "people.csv"), [header, ...crowd.map((row) => row.join(","))].join("\n") + "\n");
  const file = join(gym, "classes/sat-24.json");
  const booked = crowd.map(([id]) => id);
  const saturday = JSON.parse(readFileSync(file, "utf8"));
  const late = new Map(saturday.arrivals.map(({ id, late_s }) => [id, late_s]));
  const arrivals = booked.map((id) => ({ id, late_s: late.get(id) ?? 0 }));
  writeFileSync(file, JSON.stringify({ ...saturday, booked, arrivals }));
}

/** Runs a command of the program to its end. */
function runProgram(...words) {
  const ran = spawnSync(program, words, { encoding: "utf8" });
  if (ran.status !== 0) throw new Error(`${words[0]} failed: ${ran.stderr}`);
}

/** The program serving a gym, once it has printed what `wanted` matches. */
async function served(gym, port, wanted) {
  const running = spawn(program, ["serve", "--gym", gym, "--port", port], { stdio: ["ignore", "pipe", "inherit"] });
  const words = await new Promise((found, failed) => {
    let said = "";
    running.stdout.on("data", (bytes) => {
      said += bytes;
      const met = wanted.exec(said);
      if (met) found(met[0]);
    });
    running.on("exit", (code) => failed(new Error(`serve ended with ${code}: ${said}`)));
  });
  return { running, words };
}

const ended = (running, signal) =>
  new Promise((done) => {
    running.removeAllListeners("exit");
    running.on("exit", done);
    running.kill(signal);
  });

/**
 * A demo gym of its own, served on a free port, with so many people: `{address, ownerLink, folder, stop}`. Without
 * `classes` it has boards and people and no class yet; `fresh` it is an empty one in a file that was not there. With `inFile`
 * it is kept in a database, which remembers who is signed in; then `kill` ends the program without a word and `again`
 * starts it anew.
 */
export async function serveDemo({ heads, inFile, fresh, classes = true } = {}) {
  const folder = mkdtempSync(join(tmpdir(), "repwright-e2e-"));
  const gym = join(folder, "gym");
  if (!fresh) runProgram("demo", gym);
  if (heads) fill(gym, heads);
  if (!classes) for (const file of readdirSync(join(gym, "classes"))) rmSync(join(gym, "classes", file));
  const kept = inFile || fresh ? join(folder, "gym.db") : gym;
  if (inFile) runProgram("import", gym, "--to", kept);
  const first = await served(kept, "0", /http:\S+#owner=\S+/);
  const ownerLink = first.words;
  const { origin: address, port } = new URL(ownerLink);
  let running = first.running;
  const kill = () => ended(running, "SIGKILL");
  const again = async () => {
    ({ running } = await served(kept, port, /Ctrl-C/));
  };
  const stop = async () => {
    await ended(running, "SIGTERM");
    rmSync(folder, { recursive: true, force: true });
  };
  return { address, ownerLink, folder: gym, stop, kill, again };
}

/** A browser with an empty profile. `gym.local` is this machine, over plain http. */
export const openBrowser = () =>
  chromium.launch({
    executablePath: browserPath,
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-dev-shm-usage", // pictures of long pages do not fit into the shared memory of a container
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--host-resolver-rules=MAP gym.local 127.0.0.1",
    ],
  });

/** A page that remembers what went wrong in it: `page.faults`. */
export async function newPage(browser, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  page.faults = [];
  page.on("pageerror", (error) => page.faults.push(String(error)));
  page.on("console", (message) => {
    // Refusals are part of some flows, a gym folder does not keep everything, and over plain http the browser tells
    // that it leaves out one header.
    const expected = /status of (4\d\d|501)|Cross-Origin-Opener-Policy header has been ignored/;
    if (message.type() === "error" && !expected.test(message.text())) page.faults.push(message.text());
  });
  return page;
}

/** Signs in as the owner by the one-time link, as a first start. */
export async function becomeOwner(page, gym, password = "ten letters and more") {
  await page.goto(gym.ownerLink);
  await page.getByLabel("Your name").fill("Mira");
  await page.getByLabel("Password (may stay empty)").fill(password);
  await page.getByRole("button", { name: "Open the gym" }).click();
  await page.getByRole("heading", { name: /Next class|No class ahead/ }).waitFor();
}

/** Asks the program as who is signed in on the page; the answer. */
export const ask = (page, how, path, value) =>
  page.evaluate(
    async ([method, at, body]) => {
      const answer = await fetch(at, {
        method,
        ...(body ? { body: JSON.stringify(body), headers: { "Content-Type": "application/json" } } : {}),
      });
      if (!answer.ok) throw new Error(`${method} ${at}: ${answer.status} ${await answer.text()}`);
      return answer.json();
    },
    [how, path, value ?? null],
  );

/** Starts the clock of a class at its first stretch that `wanted` is true of. */
export async function clockTo(page, id, wanted) {
  const path = `/api/classes/${id}/clock`;
  let clock = await ask(page, "GET", path);
  const key = () => `test-${Math.random()}`;
  if (clock.state === "running" || clock.state === "paused")
    clock = await ask(page, "POST", path, { act: "stop", key: key(), version: clock.version });
  await ask(page, "POST", path, { act: "start", key: key(), version: clock.version, cue: clock.cues.find(wanted).id });
}

/** Makes a class of so many of the Saturday's people with a board of that text; without a text the board is there. */
export async function makeClass(page, { id, board, text, heads }) {
  if (text) await ask(page, "PUT", `/api/boards/${board}`, { text });
  const booked = (await ask(page, "GET", "/api/classes/sat-24")).class.booked.slice(0, heads);
  const made = { id, date: "2027-06-01", start: "09:00", minutes: 90, board_id: board, booked };
  await ask(page, "PUT", `/api/classes/${id}`, { class: made });
}

/** What axe-core calls serious or critical on the page as it stands, in words. */
export async function seriousFaults(page) {
  // The page's policy lets nothing be injected, so axe comes through the debugger and not as an element.
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(readFileSync(axeSource, "utf8"));
  const { violations } = await page.evaluate(() =>
    globalThis.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }),
  );
  return violations
    .filter((each) => ["serious", "critical"].includes(each.impact))
    .map((each) => `${each.id}: ${each.nodes.map((node) => `${node.target.join(" ")} (${node.any[0]?.message ?? node.failureSummary})`).slice(0, 4).join("; ")}`);
}

/** Waits until for half a second nothing is being asked, rehearsed or looked for. */
export const settled = (page) =>
  page.waitForFunction(
    () => {
      const busy = /Looking…|Rehearsing…/.test(document.body.innerText) || document.querySelector("[aria-busy=true]");
      if (busy || !globalThis.quietSince) globalThis.quietSince = performance.now();
      return performance.now() - globalThis.quietSince > 500;
    },
    null,
    { timeout: 60_000, polling: 50 },
  );

/** One demo gym for a whole file, its owner signed in; `take` is given { gym, browser, owner } before the first test. */
export function sharedGym(take, options) {
  let gym, browser;
  before(async () => {
    if (cannotRun) return;
    [gym, browser] = await Promise.all([serveDemo(options), openBrowser()]);
    const first = await newPage(browser);
    await becomeOwner(first, gym);
    const owner = await first.context().storageState();
    await first.context().close();
    take({ gym, browser, owner });
  });
  after(async () => {
    await browser?.close();
    await gym?.stop();
  });
}

/**
 * Makes tests that share a gym and have a page of the owner's each; `take` is given { gym, page } before every one. A
 * fault in the page's log that `page.expected` has no pattern for fails the test.
 */
export function ownersFlows(take) {
  let shared, page;
  sharedGym((given) => (shared = given));
  beforeEach(async () => {
    if (cannotRun) return;
    page = await newPage(shared.browser, { storageState: shared.owner });
    page.expected = [];
    take({ gym: shared.gym, page });
  });
  afterEach(async () => {
    if (cannotRun) return;
    await page.context().close();
    assert.deepEqual(page.faults.filter((each) => !page.expected.some((pattern) => pattern.test(each))), []);
  });
  return (name, body) => test(name, { skip: cannotRun }, body);
}
