import { sentenceFor, statusFor } from "../messages";
import type { Refusal } from "../refusal";

/** Answers of the API are never kept by a cache unless they say so themselves. */
const headers = { "cache-control": "no-store" };

export function answer(body: object, status = 200): Response {
  return Response.json(body, { status, headers });
}

/** A refusal with its sentence and everything that came with it, such as the newer version of a report. */
export function answerRefusal(refusal: Refusal): Response {
  return answer({ ...refusal, message: sentenceFor(refusal.code) }, statusFor(refusal.code));
}
