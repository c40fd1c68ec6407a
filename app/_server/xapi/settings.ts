import { statementsAt } from "@/lib/xapi";

/** Where statements are sent, and as whom. */
export interface RecordStore {
  /** Of its statements resource. */
  readonly address: string;
  /** "lrs.example": for people, without what is secret. */
  readonly host: string;
  readonly authorization: string | null;
}

/**
 * The record store that the environment names, or null where it names none. Throws a sentence for whoever runs the machine
 * where it cannot be used.
 */
export function recordStore(
  environment: Readonly<Record<string, string | undefined>> = process.env,
): RecordStore | null {
  const { XAPI_ENDPOINT: endpoint, XAPI_KEY: key, XAPI_SECRET: secret } = environment;
  if (!endpoint) return null;
  const found = statementsAt(endpoint);
  if ("problem" in found) throw new Error(found.problem);
  return {
    ...found,
    authorization: key ? `Basic ${Buffer.from(`${key}:${secret ?? ""}`).toString("base64")}` : null,
  };
}
