import { Server } from "node:http";

/** Read by the rate limit of sign-in; see ADDRESS_HEADER in app/_server/auth.ts. */
const ADDRESS_HEADER = "x-toeline-address";
/** Read by the sign-in page, which leads back there; see PATH_HEADER in app/_server/landing.ts. */
const PATH_HEADER = "x-toeline-path";
const PROXY_HEADERS = ["x-forwarded-for", "x-forwarded-host", "x-forwarded-port", "x-forwarded-proto", "forwarded"];

/**
 * Writes on every request where it comes from and which path it asks for. The first is the address of the socket; what a proxy says counts only where one
 * is trusted, because anybody can write those headers.
 */
export function stampAddresses({ trustsProxy }) {
  const emit = Server.prototype.emit;
  Server.prototype.emit = function emitStamped(event, request, ...rest) {
    if (event === "request" || event === "upgrade") stamp(request, trustsProxy);
    return emit.call(this, event, request, ...rest);
  };
}

/** Writes on one request where it comes from and what it asks for. */
export function stamp(request, trustsProxy) {
  const { headers, socket } = request;
  // the last entry is the one that the trusted proxy itself has added
  const forwarded = headers["x-forwarded-for"]?.split(",").at(-1)?.trim();
  headers[ADDRESS_HEADER] = (trustsProxy && forwarded) || socket.remoteAddress || "";
  headers[PATH_HEADER] = request.url?.split("?")[0] ?? "";
  if (!trustsProxy) for (const name of PROXY_HEADERS) delete headers[name];
}
