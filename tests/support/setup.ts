import { afterEach, vi } from "vitest";

// A stray console.error in a test is a failure that nobody has looked at yet.
const error = vi.spyOn(console, "error");
afterEach(() => {
  const calls = error.mock.calls.slice();
  error.mockClear();
  if (calls.length > 0) throw new Error(`unexpected console.error: ${calls.map((c) => c.join(" ")).join("\n")}`);
});
