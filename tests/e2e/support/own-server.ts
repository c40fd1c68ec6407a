import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { rmSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";
import Database from "libsql";

export const PASSWORD = "torch and mirror";

/** A server of a test's own, with a database of its own, so that it can be killed without harm to others. */
export class OwnServer {
  private child: ChildProcess | null = null;
  readonly address: string;

  constructor(
    private readonly port: number,
    private readonly file: string,
  ) {
    this.address = `http://localhost:${port}`;
  }

  private get env() {
    return { ...process.env, PORT: String(this.port), HOST: "127.0.0.1", DATABASE_URL: `file:${this.file}` };
  }

  /** Leaves no database behind: the server begins with its first start. */
  clear(): void {
    for (const ending of ["", "-wal", "-shm"]) rmSync(this.file + ending, { force: true });
  }

  /** Empties the database and fills it with people, a class and a paper, by a script with its arguments. */
  seed(script: readonly string[] = ["tests/support/seed-sitting.ts", PASSWORD]): void {
    this.clear();
    const run = (args: string[]) => execFileSync(process.execPath, args, { env: this.env, stdio: "inherit" });
    const migrate = "const m = await import('./prisma/tools/migrate.mjs'); m.migrate(process.env.DATABASE_URL)";
    run(["--input-type=module", "-e", migrate]);
    run(["--import", "tsx", ...script]);
  }

  async start(): Promise<void> {
    this.child = spawn(process.execPath, ["app/_server/start.mjs"], { env: this.env, stdio: "inherit" });
    for (;;) {
      const isUp = await fetch(`${this.address}/api/health`).then(
        ({ ok }) => ok,
        () => false,
      );
      if (isUp) return;
      if (this.child.exitCode !== null) throw new Error("the server ended before it was up");
      await wait(200);
    }
  }

  /** As when the power fails: nothing is said to the process. */
  async kill(): Promise<void> {
    const { child } = this;
    this.child = null;
    if (!child || child.exitCode !== null) return;
    child.kill("SIGKILL");
    await once(child, "exit");
  }

  /** Moves everything that has begun back in time, as if so many ms had passed since. */
  letTimePass(ms: number): void {
    const client = new Database(this.file);
    const earlier = (path: string) =>
      `json_set(course, '${path}', strftime('%Y-%m-%dT%H:%M:%fZ', json_extract(course, '${path}'), '-${ms / 1000} seconds'))`;
    client.exec(
      `UPDATE SectionRun SET course = ${earlier("$.startedAt")} WHERE json_extract(course, '$.startedAt') IS NOT NULL`,
    );
    client.exec(`UPDATE Sitting SET course = ${earlier("$.begunAt")}`);
    client.close();
  }

  async signIn(username: string): Promise<Session> {
    const response = await fetch(`${this.address}/api/auth/sign-in/username`, {
      method: "POST",
      headers: { "content-type": "application/json", origin: this.address },
      body: JSON.stringify({ username, password: PASSWORD }),
    });
    if (!response.ok) throw new Error(`${username} could not sign in: ${response.status} ${await response.text()}`);
    const cookie = response.headers.getSetCookie().map((line) => line.split(";")[0]);
    return new Session(this.address, cookie.join("; "));
  }
}

interface Answer {
  readonly status: number;
  // what a route answers is looked at by the test
  // biome-ignore lint/suspicious/noExplicitAny: see above
  readonly body: any;
}

/** One event of a live view, and when it came. */
export interface LiveEvent {
  readonly name: string;
  // biome-ignore lint/suspicious/noExplicitAny: what is in it is looked at by the test
  readonly data: any;
  readonly cameAt: number;
}

/** Somebody signed in, in a browser of their own. */
export class Session {
  constructor(
    private readonly address: string,
    private readonly cookie: string,
  ) {}

  async send(method: string, path: string, body?: object): Promise<Answer> {
    const response = await fetch(this.address + path, {
      method,
      headers: { cookie: this.cookie, origin: this.address, "content-type": "application/json" },
      ...(body && { body: JSON.stringify(body) }),
    });
    const text = await response.text();
    return { status: response.status, body: text === "" ? null : JSON.parse(text) };
  }

  /** What is sent as bytes is read to its end; only how much it is goes on. */
  async fetchBytes(path: string): Promise<Answer> {
    const response = await fetch(this.address + path, { headers: { cookie: this.cookie } });
    return { status: response.status, body: { bytes: (await response.arrayBuffer()).byteLength } };
  }

  /** Follows a live view; what has come is in `events`. */
  follow(path: string): { readonly events: LiveEvent[]; stop(): void } {
    const events: LiveEvent[] = [];
    const controller = new AbortController();
    void this.read(path, events, controller.signal).catch(() => undefined);
    return { events, stop: () => controller.abort() };
  }

  private async read(path: string, events: LiveEvent[], signal: AbortSignal): Promise<void> {
    const response = await fetch(this.address + path, { headers: { cookie: this.cookie }, signal });
    let text = "";
    const decoder = new TextDecoder();
    for await (const chunk of response.body ?? []) {
      text += decoder.decode(chunk, { stream: true });
      for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
        const found = /^event: (.*)\ndata: (.*)$/.exec(text.slice(0, end));
        text = text.slice(end + 2);
        if (found) events.push({ name: found[1], data: JSON.parse(found[2]), cameAt: Date.now() });
      }
    }
  }
}
