import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { landingPath, signInPath } from "@/app/_server/landing";
import { stamp } from "@/app/_server/start/address-stamp.mjs";

const HERE = "http://shop.local:3000";

describe("where somebody lands after signing in", () => {
  test.each(["/history", "/practice/aB3_-x/marks", "/desk/aB3_-x"])("%s is a page", (path) => {
    expect(landingPath(path)).toBe(path);
    expect(signInPath(path)).toBe(`/sign-in?to=${encodeURIComponent(path)}`);
  });

  // the usual ways to write an address that a browser takes for another site (OWASP, unvalidated redirects; from memory)
  test.each([
    "//evil.example",
    "///evil.example",
    "/\\evil.example",
    "\\\\evil.example",
    "/\t/evil.example",
    "/\n/evil.example",
    "https://evil.example",
    "https:evil.example",
    "javascript:alert(1)",
    "/%2F/evil.example",
    "/%5Cevil.example",
    "/.evil.example",
    "/@evil.example",
    "/history?to=//evil.example",
    "/history#x",
    "/history\n",
    "history",
    "/history/",
    "/../history",
    "/",
    "",
    `/${"x".repeat(200)}`,
    ["/history"],
    undefined,
  ])("%j is none", (text) => {
    expect(landingPath(text)).toBeNull();
    expect(signInPath(text)).toBe("/sign-in");
  });

  test.each(["/sign-in", "/join", "/setup", "/api/auth/sign-out"])("%s is no page to come back to", (path) => {
    expect(landingPath(path)).toBeNull();
  });

  test("never leaves the site, whatever is sent", () => {
    const pieces = fc.constantFrom("/", "\\", ".", ":", "@", "%2f", "\t", "evil", "http", "?", "#", "a-b");
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces, { maxLength: 8 }).map((all) => all.join("")),
        ),
        (text) => {
          const path = landingPath(text);
          if (path !== null) expect(new URL(path, HERE).href).toBe(HERE + path);
        },
      ),
    );
  });
});

test.each([
  ["/history", "/history"],
  ["/practice/x/marks?_rsc=abc", "/practice/x/marks"],
])("a request for %s is stamped with its path, whatever it claims itself", (url, path) => {
  const request = { url, headers: { "x-toeline-path": "/desk" } as Record<string, string>, socket: {} };
  stamp(request, false);
  expect(request.headers["x-toeline-path"]).toBe(path);
});
