// Phones that post scores and screens that look on, over loopback: how long an answer takes, and whether anything is lost.
//   node tests/load/phones.mjs [PHONES 60] [SCREENS 10] [SCORES OF EACH 10]
import http from "node:http";
import { cannotRun } from "../e2e/support.mjs";
import { serveFile } from "../e2e/outage.mjs";

const [phones, screens, each] = [60, 10, 10].map((usual, index) => Number(process.argv[2 + index] ?? usual));
const pause = 1_000; // milliseconds between two scores of one phone, on average
const classId = "sat-24";

if (typeof cannotRun === "string" && /not built/.test(cannotRun)) {
  console.error(cannotRun);
  process.exit(2);
}

const sleep = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

/** One device with a connection of its own. */
function device(address, cookie) {
  const agent = new http.Agent({ keepAlive: true, maxSockets: 1 });
  return (method, path, body) =>
    new Promise((found, failed) => {
      const began = performance.now();
      const request = http.request(
        `${address}${path}`,
        { method, agent, headers: { "Content-Type": "application/json", ...(cookie ? { Cookie: cookie } : {}) } },
        (response) => {
          let text = "";
          response.on("data", (bytes) => (text += bytes));
          response.on("end", () =>
            found({ status: response.statusCode, text, cookie: response.headers["set-cookie"]?.[0]?.split(";")[0], took: performance.now() - began }),
          );
        },
      );
      request.on("error", failed);
      request.end(body === undefined ? undefined : JSON.stringify(body));
    });
}

/** A screen: listens to what changes and looks at the scores again each time, as the page does. */
function screen(address, cookie, times) {
  const ask = device(address, cookie);
  let busy = false;
  const look = async () => {
    if (busy) return;
    busy = true;
    times.push((await ask("GET", `/api/classes/${classId}/scores`)).took);
    busy = false;
  };
  const stream = http.get(`${address}/api/events`, { headers: { Cookie: cookie } }, (response) =>
    response.on("data", () => void look()),
  );
  stream.on("error", () => {});
  return () => stream.destroy();
}

const share = (sorted, part) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0;
const line = (name, times) => {
  const sorted = [...times].sort((a, b) => a - b);
  const words = [0.5, 0.9, 0.99, 1].map((part) => `${share(sorted, part).toFixed(1)}`);
  console.log(`${name}: ${sorted.length} answers, p50 ${words[0]} ms, p90 ${words[1]} ms, p99 ${words[2]} ms, longest ${words[3]} ms`);
};

const gym = await serveFile();
try {
  const token = new URL(gym.ownerLink).hash.replace("#owner=", "");
  const { cookie } = await device(gym.address)("POST", "/api/owner", { token, name: "Load", password: "ten letters and more" });
  const people = JSON.parse((await device(gym.address, cookie)("GET", `/api/classes/${classId}/arrivals`)).text).people;
  const looks = [];
  const posts = [];
  const sent = new Set();
  const stops = Array.from({ length: screens }, () => screen(gym.address, cookie, looks));
  await Promise.all(
    Array.from({ length: phones }, async (_, phone) => {
      const ask = device(gym.address, cookie);
      for (let i = 0; i < each; ++i) {
        await sleep(pause * 2 * Math.random());
        const key = `phone-${phone}-${i}`;
        const person = people[phone % people.length].id;
        const answer = await ask("POST", `/api/classes/${classId}/scores`, { key, person, score: `${100 + i}`, done_as: key });
        posts.push(answer.took);
        if (answer.status === 200) sent.add(key);
        else console.log(`${key} was answered ${answer.status}: ${answer.text}`);
      }
    }),
  );
  for (const stop of stops) stop();
  const kept = JSON.parse((await device(gym.address, cookie)("GET", `/api/classes/${classId}/scores`)).text).map((row) => row.done_as);
  const lost = [...sent].filter((key) => !kept.includes(key)).length;
  line(`${phones} phones`, posts);
  line(`${screens} screens`, looks);
  console.log(`lost: ${lost} of ${sent.size} acknowledged; doubled: ${kept.length - new Set(kept).size}; refused: ${phones * each - sent.size}`);
  process.exitCode = lost === 0 && kept.length === new Set(kept).size ? 0 : 1;
} finally {
  await gym.stop();
}
