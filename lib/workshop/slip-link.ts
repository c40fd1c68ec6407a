/** What signs somebody in the first time. */
export interface SlipAccess {
  readonly signInName: string;
  readonly code: string;
}

/** How somebody signs in the first time; told once, to be printed or noted down, and never readable later. */
export interface SignInSlip extends SlipAccess {
  readonly name: string;
}

/** The address that the QR code of a sign-in slip leads to. The code is in the fragment, which browsers send to no server. */
export function slipLink(address: string, { signInName, code }: SlipAccess): string {
  return `${address}/slip#${new URLSearchParams({ name: signInName, code })}`;
}

/** What the fragment of such an address says, with its `#`; null where it says nothing of the kind. */
export function readSlipFragment(fragment: string): SlipAccess | null {
  const fields = new URLSearchParams(fragment.replace(/^#/, ""));
  const signInName = fields.get("name");
  const code = fields.get("code");
  return signInName && code ? { signInName, code } : null;
}

/** The address of a workshop as it was typed, without what follows the host; null where it is none. */
export function readAddress(typed: string): string | null {
  const text = typed.trim();
  const full = /^[a-z][a-z0-9+.-]*:\/\//i.test(text) ? text : `http://${text}`;
  if (!URL.canParse(full)) return null;
  const { protocol, origin, hostname, username } = new URL(full);
  // browsers differ in what they take for a host: only what could be typed counts
  const isHost = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)$/.test(hostname);
  return (protocol === "http:" || protocol === "https:") && isHost && username === "" ? origin : null;
}

/** True for an address that means whatever computer it is typed on. */
export function isOnlyThisComputer(address: string): boolean {
  return /^https?:\/\/(localhost|127\.\d+\.\d+\.\d+|\[::1\])(:\d+)?$/.test(address);
}
