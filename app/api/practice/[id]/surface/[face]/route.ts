import { answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readSurface } from "@/app/_server/use-cases/read-surface";

/** A specimen never changes once it is made, so a browser may keep its surfaces for good; nobody between may. */
const CACHE = "private, max-age=31536000, immutable";

/**
 * The packed surface of one face, see `decodeFace` in lib/surface, as a gzip file: Next takes Content-Encoding off the
 * answers of routes, so the browser unzips it itself.
 */
export async function GET(request: Request, { params }: RouteContext<"/api/practice/[id]/surface/[face]">) {
  const { id, face } = await params;
  const read = await readSurface(await currentCaller(), id, face);
  if (!read.ok) return answerRefusal(read);
  const etag = `"${read.specimenId}-${face}"`;
  const headers = { etag, "cache-control": CACHE, vary: "cookie" };
  if (request.headers.get("if-none-match") === etag) return new Response(null, { status: 304, headers });
  return new Response(read.bytes, { headers: { ...headers, "content-type": "application/gzip" } });
}
