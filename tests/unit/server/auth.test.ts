import { beforeEach, describe, expect, test } from "vitest";
import { createAuth, SIGN_IN_TRIES } from "@/app/_server/auth";
import { stamp } from "@/app/_server/start/address-stamp.mjs";
import { freshDatabaseForEachTest } from "../../support/database";
import { openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const HERE = "http://localhost:3000";
let auth: ReturnType<typeof createAuth>;
beforeEach(() => {
  auth = createAuth();
});

function signIn(password: string, address: string, headers: Record<string, string> = {}): Promise<Response> {
  return auth.handler(
    new Request(`${HERE}/api/auth/sign-in/username`, {
      method: "POST",
      headers: { "content-type": "application/json", origin: HERE, "x-toeline-address": address, ...headers },
      body: JSON.stringify({ username: "learner", password }),
    }),
  );
}

describe("sign in", () => {
  test("sets a cookie that scripts and other sites' posts do not get, and gives away no address", async () => {
    await openTestWorkshop();
    const response = await signIn("long enough 1", "10.0.0.1");
    expect(response.status).toBe(200);
    const cookie = response.headers.get("set-cookie") ?? "";
    expect(cookie).toMatch(/^toeline\.session_token=/);
    expect(cookie).toMatch(/HttpOnly/i);
    expect(cookie).toMatch(/SameSite=Lax/i);
  });

  test("counts wrong tries by address of the socket, whatever the request says of itself", async () => {
    await openTestWorkshop();
    for (let i = 0; i < SIGN_IN_TRIES; i++) {
      const forged = { "x-forwarded-for": `192.0.2.${i}` };
      expect((await signIn("wrong password", "10.0.0.2", forged)).status).toBe(401);
    }
    expect((await signIn("long enough 1", "10.0.0.2", { "x-forwarded-for": "192.0.2.99" })).status).toBe(429);
    expect((await signIn("long enough 1", "10.0.0.3")).status).toBe(200);
  });
});

test("a whole class signs in from one address, with a slip of the finger between", async () => {
  await openTestWorkshop();
  for (let i = 0; i < SIGN_IN_TRIES; i++) expect((await signIn("long enough 1", "10.0.0.4")).status).toBe(200);
  for (let i = 0; i < SIGN_IN_TRIES; i++) expect((await signIn("wrong password", "10.0.0.4")).status).toBe(401);
  expect((await signIn("long enough 1", "10.0.0.4")).status).toBe(429);
});

describe("the address written on a request", () => {
  test.each([
    [false, "127.0.0.1", undefined],
    [true, "203.0.113.7", "198.51.100.1, 203.0.113.7"],
  ])("trusting a proxy: %s", (trustsProxy, address, forwardedFor) => {
    const headers: Record<string, string> = {
      "x-forwarded-for": "198.51.100.1, 203.0.113.7",
      "x-toeline-address": "1.2.3.4",
    };
    stamp({ headers, socket: { remoteAddress: "127.0.0.1" } }, trustsProxy);
    expect(headers["x-toeline-address"]).toBe(address);
    expect(headers["x-forwarded-for"]).toBe(forwardedFor);
  });
});
