/** Written by the start script on every request: the path that was asked for, without its query. */
export const PATH_HEADER = "x-toeline-path";

/** Pages that somebody may come for: plain segments, so that no address of another site, query or file passes. */
const PAGE_PATH = /^(\/[A-Za-z0-9_-]+)+$/;
/** Where nobody has to be signed in. */
const OPEN_PATHS = /^\/(sign-in|slip|own-password|join|setup|api)(\/|$)/;
const LONGEST = 200;

/** The page to land on after signing in, from whatever was sent along; null where that is no page of the workshop. */
export function landingPath(text: unknown): string | null {
  if (typeof text !== "string" || text.length > LONGEST) return null;
  return PAGE_PATH.test(text) && !OPEN_PATHS.test(text) ? text : null;
}

/** The address of the sign-in page that leads on to what somebody came for. */
export function signInPath(cameFor: unknown): string {
  const path = landingPath(cameFor);
  return path ? `/sign-in?to=${encodeURIComponent(path)}` : "/sign-in";
}
