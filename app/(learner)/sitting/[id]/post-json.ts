const NO_ANSWER = "The workshop's server does not answer just now, so nothing was changed. Try again in a moment.";

interface Sent {
  /** What the server answered; null where it did not. */
  readonly answer: unknown;
  /** Why nothing came of it, in words. */
  readonly problem: string | null;
}

/** Sends JSON and tells what came of it; it never throws. */
export async function postJson(path: string, body?: object): Promise<Sent> {
  try {
    const response = await fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      ...(body && { body: JSON.stringify(body) }),
    });
    const answer: unknown = await response.json();
    return { answer, problem: response.ok ? null : (messageIn(answer) ?? NO_ANSWER) };
  } catch {
    return { answer: null, problem: NO_ANSWER };
  }
}

function messageIn(answer: unknown): string | null {
  if (typeof answer !== "object" || answer === null || !("message" in answer)) return null;
  return typeof answer.message === "string" ? answer.message : null;
}
