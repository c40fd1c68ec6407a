import "server-only";
import { parseSetCookieHeader, toCookieOptions } from "better-auth/cookies";
import { cookies, headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import type { Role } from "@/lib/workshop";
import { readWorkshop } from "@/prisma/stores/workshops";
import { ADDRESS_HEADER, auth, type OPEN_AUTH_PATHS } from "./auth";
import type { Actor, Caller } from "./caller";
import { landingPath, PATH_HEADER, signInPath } from "./landing";
import type { Refusal } from "./refusal";

const SENT_ON = ["cookie", "user-agent", ADDRESS_HEADER] as const;

/** The session of the request; looked up once for each. */
const currentSession = cache(async () => {
  // not the header as it came in: after an action the page is drawn in the same request, with the cookies just set
  const cookie = (await cookies()).toString();
  return auth().api.getSession({ headers: new Headers({ cookie }) });
});

/** Who is signed in. */
export async function currentActor(): Promise<Actor | null> {
  const session = await currentSession();
  if (!session) return null;
  const { id, name, role, hasOneTimeCode } = session.user;
  return { id, name, role: role as Role, hasOneTimeCode: hasOneTimeCode === true };
}

/** The caller of a use case: whoever is signed in, at the server's time. */
export async function currentCaller(): Promise<Caller> {
  return {
    actor: await currentActor(),
    clock: () => new Date(),
    sessionId: (await currentSession())?.session.id,
    address: (await headers()).get(ADDRESS_HEADER) ?? undefined,
  };
}

/**
 * Asks the sign-in library as a browser would, so that its rate limit counts, and hands its cookies on. Only for server
 * actions, whose origin is checked already.
 */
export async function askAuth(path: (typeof OPEN_AUTH_PATHS)[number], body: object): Promise<{ status: number }> {
  const incoming = await headers();
  const origin = process.env.PUBLIC_URL ?? `http://localhost:${process.env.PORT ?? "3000"}`;
  const outgoing = new Headers({ "content-type": "application/json", origin });
  for (const name of SENT_ON) {
    const value = incoming.get(name);
    if (value !== null) outgoing.set(name, value);
  }
  const url = new URL(`/api/auth${path}`, origin);
  const response = await auth().handler(
    new Request(url, { method: "POST", headers: outgoing, body: JSON.stringify(body) }),
  );
  const jar = await cookies();
  for (const line of response.headers.getSetCookie()) {
    for (const [name, cookie] of parseSetCookieHeader(line)) jar.set(name, cookie.value, toCookieOptions(cookie));
  }
  return { status: response.status };
}

/** Turns the refusal of a page's use case into the page that answers it. */
export async function showRefusal({ code }: Refusal): Promise<never> {
  if (code === "not-signed-in") {
    const cameFor = (await headers()).get(PATH_HEADER);
    return redirect((await readWorkshop()) ? signInPath(cameFor) : "/setup");
  }
  if (code === "own-password-needed") return redirect("/own-password");
  if (code === "not-set-up") return redirect("/setup");
  if (code === "book-closed") return redirect("/book-closed");
  if (code === "not-permitted") return redirect("/");
  return notFound();
}

/** After signing in: to the page somebody came for; otherwise a tutor comes to the desk, a learner to Today. */
export async function goHome(cameFor?: unknown): Promise<never> {
  const actor = await currentActor();
  if (actor?.hasOneTimeCode) return redirect("/own-password");
  const path = landingPath(cameFor);
  if (path) return redirect(path);
  return redirect(actor?.role === "tutor" ? "/desk" : "/");
}
