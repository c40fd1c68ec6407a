/** Where a record store takes statements, or why an address is none. */
export type Endpoint = { readonly address: string; readonly host: string } | { readonly problem: string };

/**
 * The address of the statements resource of a record store, from the one that whoever runs the machine was given for it.
 *
 * @example statementsAt("https://lrs.example/xapi/") // { address: "https://lrs.example/xapi/statements", host: "lrs.example" }
 */
export function statementsAt(endpoint: string): Endpoint {
  const url = URL.canParse(endpoint) ? new URL(endpoint) : null;
  if (!url || !/^https?:$/.test(url.protocol)) {
    return { problem: "XAPI_ENDPOINT has to be the address of a record store, for example https://lrs.example/xapi" };
  }
  if (url.username || url.password) {
    return { problem: "XAPI_ENDPOINT has a name or a password in it: put them into XAPI_KEY and XAPI_SECRET instead" };
  }
  url.pathname = `${url.pathname.replace(/\/+$/, "").replace(/\/statements$/, "")}/statements`;
  return { address: url.href, host: url.host };
}
