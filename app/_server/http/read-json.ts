import { type Refusal, refuse } from "../refusal";
import { isSameOrigin } from "./same-origin";

type Body = { readonly ok: true; readonly body: unknown } | Refusal;

/**
 * The JSON body of a request that changes something; an empty body is undefined. Refuses another site's request, more than
 * `limit` bytes (counted as they arrive, whatever the header says) and anything that is not JSON.
 */
export async function readJson(request: Request, limit: number): Promise<Body> {
  if (!isSameOrigin(request)) return refuse("foreign-origin");
  const bytes = await readAtMost(request, limit);
  if (bytes === null) return refuse("too-large");
  const text = new TextDecoder().decode(bytes);
  if (text === "") return { ok: true, body: undefined };
  try {
    return { ok: true, body: JSON.parse(text) };
  } catch {
    return refuse("not-json");
  }
}

async function readAtMost(request: Request, limit: number): Promise<Uint8Array | null> {
  if (!request.body) return new Uint8Array();
  const reader = request.body.getReader();
  const chunks: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return Buffer.concat(chunks);
    size += value.byteLength;
    if (size > limit) {
      await reader.cancel();
      return null;
    }
    chunks.push(value);
  }
}
