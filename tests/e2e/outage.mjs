// A gym in a database file whose program can be killed and started again at the same address.
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { tmpdir } from "node:os";
import { fileURLToPath } from "node:url";

const program = process.env.REPWRIGHT ?? join(dirname(fileURLToPath(import.meta.url)), "../../build/dev/repwright");

/** Serves the file; `{ process, said }` once it is there, `said` being what the pattern met in what it printed. */
function serve(file, port, pattern) {
  const served = spawn(program, ["serve", "--gym", file, "--port", String(port)], { stdio: ["ignore", "pipe", "inherit"] });
  return new Promise((found, failed) => {
    let said = "";
    served.stdout.on("data", (bytes) => {
      said += bytes;
      const met = pattern.exec(said);
      if (met) found({ process: served, said: met[0] });
    });
    served.on("exit", (code) => failed(new Error(`serve ended with ${code}: ${said}`)));
  });
}

/** The demo gym in a file of its own: `{ address, ownerLink, kill, start, stop }`. */
export async function serveFile() {
  const folder = mkdtempSync(join(tmpdir(), "repwright-outage-"));
  const file = join(folder, "gym.db");
  for (const command of [["demo", join(folder, "gym")], ["import", join(folder, "gym"), "--to", file]]) {
    const done = spawnSync(program, command, { encoding: "utf8" });
    if (done.status !== 0) throw new Error(`${command[0]} failed: ${done.stderr}`);
  }
  let { process: served, said: ownerLink } = await serve(file, 0, /http:\S+#owner=\S+/);
  const { origin, port } = new URL(ownerLink);
  const kill = () =>
    new Promise((done) => {
      served.removeAllListeners("exit");
      served.on("exit", done);
      served.kill("SIGKILL");
    });
  const start = async () => {
    ({ process: served } = await serve(file, port, /http:\S+/));
  };
  const stop = async () => {
    await kill();
    rmSync(folder, { recursive: true, force: true });
  };
  return { address: origin, ownerLink, kill, start, stop };
}
