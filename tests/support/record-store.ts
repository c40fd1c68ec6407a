import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { problemsOf } from "./xapi-rules";

/** What the stand-in does with the next requests. */
export type Mood =
  | "well"
  | "failing"
  | "silent"
  | "refusing"
  | "loses-answer"
  | "unauthorised"
  | "moved"
  | "voids-nothing"
  | "chokes"
  | "forbids";

/** A record store of a few lines: it takes statements by the published rules, and can be in a bad way. */
export interface StandIn {
  readonly endpoint: string;
  /** Every request that came in: how many statements it had. */
  readonly requests: number[];
  /** Everything that was stored, by its id, in the order of arrival. */
  readonly stored: Map<string, Record<string, unknown>>;
  mood: Mood;
  /** Statements with this in them are refused, or in the mood "chokes" failed at. */
  dislikes: string | null;
  close(): Promise<void>;
}

export async function openRecordStore(): Promise<StandIn> {
  const requests: number[] = [];
  const stored = new Map<string, Record<string, unknown>>();
  const server: Server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on("data", (part) => parts.push(part));
    request.on("end", () => {
      const sent = JSON.parse(Buffer.concat(parts).toString("utf8")) as Record<string, unknown>[];
      requests.push(sent.length);
      const answer = (status: number, body: unknown = "") => response.writeHead(status).end(JSON.stringify(body));
      if (standIn.mood === "silent") return;
      if (standIn.mood === "failing") return answer(503, "being looked after");
      if (standIn.mood === "unauthorised") return answer(401, "who are you?");
      if (standIn.mood === "forbids") return answer(403, "not you");
      if (standIn.mood === "moved") {
        response.writeHead(301, { location: "https://elsewhere.example/xapi/statements" }).end();
        return;
      }
      if (request.method !== "POST" || request.url !== "/xapi/statements") return answer(404);
      if (request.headers["x-experience-api-version"] !== "1.0.3") return answer(400, "no version");
      if (request.headers.authorization !== `Basic ${Buffer.from("key:secret").toString("base64")}`) return answer(401);
      const problems = sent.flatMap(problemsOf);
      if (problems.length > 0) return answer(400, problems);
      // the whole request, where the source may not take anything back (xAPI 1.0.3, Data 2.3.2)
      if (standIn.mood === "voids-nothing" && JSON.stringify(sent).includes("/verbs/voided")) {
        return answer(403, "may not void");
      }
      const { dislikes } = standIn;
      if (standIn.mood === "chokes" && dislikes && JSON.stringify(sent).includes(dislikes)) return answer(500, "oh");
      if (standIn.mood === "refusing" || (dislikes && JSON.stringify(sent).includes(dislikes))) {
        return answer(400, "not in this house");
      }
      // the batch is taken as a whole or not at all
      const differs = sent.some(({ id, ...rest }) => {
        const known = stored.get(String(id));
        return known && JSON.stringify(known) !== JSON.stringify(rest);
      });
      if (differs) return answer(409, "another statement has this id");
      for (const { id, ...rest } of sent) stored.set(String(id), rest);
      if (standIn.mood === "loses-answer") return response.destroy();
      answer(
        200,
        sent.map(({ id }) => id),
      );
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const standIn: StandIn = {
    endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}/xapi/`,
    requests,
    stored,
    mood: "well",
    dislikes: null,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
  return standIn;
}
