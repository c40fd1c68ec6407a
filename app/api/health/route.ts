import { answer } from "@/app/_server/http/answer";

/** Says that the server is up; knows nothing else. */
export function GET(): Response {
  return answer({ ok: true });
}
