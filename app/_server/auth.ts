import { betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";
import { createAuthMiddleware, getIP } from "better-auth/api";
import { username } from "better-auth/plugins";
import { signInNameSchema } from "@/lib/workshop";
import { database } from "@/prisma/client";
import { forgetTry } from "@/prisma/stores/tries";
import { hashPassword, isPassword } from "./passwords";

/** Written by the start script on every request: the address of the socket, or of the proxy's client if one is trusted. */
export const ADDRESS_HEADER = "x-toeline-address";

const THIRTY_DAYS_S = 30 * 24 * 60 * 60;
const MINUTE_S = 60;

/** Failed tries to sign in from one address until a minute without any: a whole class may sit behind one. */
export const SIGN_IN_TRIES = 40;

const SIGN_IN_PATH = "/sign-in/username";

/** What may be asked for under /api/auth; accounts are made by use cases only. */
export const OPEN_AUTH_PATHS = ["/sign-in/username", "/sign-out", "/change-password", "/get-session"] as const;

/** Sign-in and sessions over the database that is open now. */
export function createAuth() {
  return betterAuth({
    appName: "Toeline",
    baseURL: process.env.PUBLIC_URL ?? `http://localhost:${process.env.PORT ?? "3000"}`,
    secret: process.env.AUTH_SECRET,
    database: prismaAdapter(database(), { provider: "sqlite" }),
    telemetry: { enabled: false },
    logger: { level: "error" },
    // the same machine is reached under several names on a workshop's network: its own address counts, whatever it is
    trustedOrigins: (request) => {
      const host = request?.headers.get("host");
      return host ? [`http://${host}`, `https://${host}`] : [];
    },
    user: {
      additionalFields: { role: { type: "string", input: false }, hasOneTimeCode: { type: "boolean", input: false } },
    },
    // pages cannot write cookies, so a session is not prolonged while it lasts
    session: { expiresIn: THIRTY_DAYS_S, disableSessionRefresh: true },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: 10,
      password: { hash: hashPassword, verify: ({ hash, password }) => isPassword(hash, password) },
    },
    rateLimit: {
      enabled: true,
      storage: "database",
      window: MINUTE_S,
      max: 100,
      customRules: {
        [SIGN_IN_PATH]: { window: MINUTE_S, max: SIGN_IN_TRIES },
        "/change-password": { window: MINUTE_S, max: 10 },
      },
    },
    advanced: {
      cookiePrefix: "toeline",
      useSecureCookies: process.env.PUBLIC_URL?.startsWith("https:") ?? false,
      defaultCookieAttributes: { httpOnly: true, sameSite: "lax" },
      ipAddress: { ipAddressHeaders: [ADDRESS_HEADER] },
    },
    hooks: {
      // the library counts every try; whoever gets in is no guesser
      after: createAuthMiddleware(async ({ path, request, context }) => {
        if (path !== SIGN_IN_PATH || !request || !context.newSession) return;
        await forgetTry(`${getIP(request, context.options)}|${path}`);
      }),
    },
    plugins: [username({ usernameValidator: (name) => signInNameSchema.safeParse(name).success })],
  });
}

let instance: ReturnType<typeof createAuth> | undefined;

/** Opened on first use, because building the pages has neither a database nor a secret. */
export function auth(): ReturnType<typeof createAuth> {
  instance ??= createAuth();
  return instance;
}
