import { describe, expect, test } from "vitest";
import { answerRefusal } from "@/app/_server/http/answer";
import { readJson } from "@/app/_server/http/read-json";
import { isSameOrigin } from "@/app/_server/http/same-origin";
import { sentenceFor, statusFor } from "@/app/_server/messages";
import { REFUSAL_CODES, refuse } from "@/app/_server/refusal";

const URL_HERE = "http://shop.local:3000/api/x";

function post(body: BodyInit, headers: Record<string, string> = {}): Request {
  return new Request(URL_HERE, { method: "POST", body, headers: { host: "shop.local:3000", ...headers } });
}

describe("where a request comes from", () => {
  test.each([
    [{ origin: "http://shop.local:3000" }, true],
    [{ origin: "https://shop.local:3000" }, true],
    [{ origin: "http://evil.example" }, false],
    [{ origin: "http://shop.local:3001" }, false],
    [{ origin: "null" }, false],
    [{ "sec-fetch-site": "cross-site" }, false],
    [{}, true],
  ])("%j: %s", (headers, isSame) => {
    expect(isSameOrigin(post("{}", headers as Record<string, string>))).toBe(isSame);
  });
});

describe("the body of a request", () => {
  test("is read up to its limit and not a byte further", async () => {
    const body = JSON.stringify("x".repeat(98));
    expect(await readJson(post(body), 100)).toEqual({ ok: true, body: "x".repeat(98) });
    expect(await readJson(post(body), 99)).toEqual({ ok: false, code: "too-large" });
  });

  test("may be empty, and has to be JSON otherwise", async () => {
    expect(await readJson(post(""), 100)).toEqual({ ok: true, body: undefined });
    expect(await readJson(post("{"), 100)).toEqual({ ok: false, code: "not-json" });
  });

  test("of another site is not read at all", async () => {
    const request = post("{}", { origin: "http://evil.example" });
    expect(await readJson(request, 100)).toEqual({ ok: false, code: "foreign-origin" });
    expect(request.bodyUsed).toBe(false);
  });
});

describe("refusals", () => {
  test.each(REFUSAL_CODES)("%s has a sentence of its own and a status of a refusal", (code) => {
    expect(sentenceFor(code)).toMatch(/^[A-Z].*\.$/);
    expect(statusFor(code)).toBeGreaterThanOrEqual(400);
    expect(statusFor(code)).toBeLessThan(500);
    expect(REFUSAL_CODES.filter((other) => sentenceFor(other) === sentenceFor(code))).toEqual([code]);
  });

  test("are answered with everything that came with them, and kept by no cache", async () => {
    const response = answerRefusal(refuse("stale-save", { sequence: 7 }));
    expect(response.status).toBe(409);
    expect(response.headers.get("cache-control")).toBe("no-store");
    expect(await response.json()).toEqual({
      ok: false,
      code: "stale-save",
      sequence: 7,
      message: sentenceFor("stale-save"),
    });
  });
});
