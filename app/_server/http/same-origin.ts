/**
 * True where a request that changes something was sent by a page of this very site. Browsers always send Origin with such
 * requests; a program without one is no other site's page, and has to bring a session of its own anyway.
 */
export function isSameOrigin(request: Request): boolean {
  const origin = request.headers.get("origin");
  if (origin === null) return request.headers.get("sec-fetch-site") !== "cross-site";
  if (!URL.canParse(origin)) return false;
  return new URL(origin).host === request.headers.get("host");
}
