// Phones that post scores, screens on the clock and two coaches on the list of scores, over loopback: how long an answer
// takes, and whether anything is lost.
//   node tests/load/phones.mjs [PHONES 60] [SCREENS 10] [SCORES OF EACH 10]
import http from "node:http";
import { cannotRun } from "../e2e/support.mjs";
import { serveFile } from "../e2e/outage.mjs";

const [phones, screens, each] = [60, 10, 10].map((usual, index) => Number(process.argv[2 + index] ?? usual));
const pause = 1_000; // milliseconds between two scores of one phone, on average
const coaches = 2;
const timeEvery = 2_000; // milliseconds between two questions of a screen for the program's time
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

/** A page that listens to what changes and looks again at `path` each time that the topic is named, as the page does. */
function listener(address, cookie, topic, path, times) {
  const ask = device(address, cookie);
  let busy = false;
  let again = false;
  const look = async () => {
    again = busy;
    if (busy) return;
    busy = true;
    times.push((await ask("GET", path)).took);
    busy = false;
    if (again) void look();
  };
  const stream = http.get(`${address}/api/events`, { headers: { Cookie: cookie } }, (response) =>
    response.on("data", (bytes) => {
      if (String(bytes).includes(`"${topic}"`)) void look();
    }),
  );
  stream.on("error", () => {});
  return () => stream.destroy();
}

/** A screen on the clock: asks for the program's time again and again, and for the clock when that changed. */
function screen(address, cookie, times) {
  const ask = device(address, cookie);
  const timer = setInterval(async () => times.push((await ask("GET", "/api/time")).took), timeEvery);
  const hangUp = listener(address, cookie, "clock", `/api/classes/${classId}/clock`, times);
  return () => {
    clearInterval(timer);
    hangUp();
  };
}

/** The coach's remote: the clock runs, and gets half a minute more now and then. */
function remote(address, cookie) {
  const ask = device(address, cookie);
  let version = 0;
  const act = async (deed, more = {}) => {
    const answer = await ask("POST", `/api/classes/${classId}/clock`, { act: deed, key: `act-${version}`, version, ...more });
    if (answer.status === 200) version = JSON.parse(answer.text).version;
  };
  const timer = setInterval(() => void act(version === 0 ? "start" : "add", version === 0 ? {} : { seconds: 30 }), 1_500);
  return () => clearInterval(timer);
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
  const lists = [];
  const stops = [
    remote(gym.address, cookie),
    ...Array.from({ length: screens }, () => screen(gym.address, cookie, looks)),
    ...Array.from({ length: coaches }, () => listener(gym.address, cookie, "scores", `/api/classes/${classId}/scores`, lists)),
  ];
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
  line(`${coaches} lists of scores`, lists);
  console.log(`lost: ${lost} of ${sent.size} acknowledged; doubled: ${kept.length - new Set(kept).size}; refused: ${phones * each - sent.size}`);
  process.exitCode = lost === 0 && kept.length === new Set(kept).size ? 0 : 1;
} finally {
  await gym.stop();
}
