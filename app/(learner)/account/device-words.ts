const BROWSERS: readonly (readonly [RegExp, string])[] = [
  // most browsers name others as well: the most particular comes first
  [/Edg(A|iOS)?\//, "Edge"],
  [/OPR\//, "Opera"],
  [/SamsungBrowser\//, "Samsung Internet"],
  [/(Firefox|FxiOS)\//, "Firefox"],
  [/(Chrome|CriOS|Chromium)\//, "Chrome"],
  [/Safari\//, "Safari"],
];
const SYSTEMS: readonly (readonly [RegExp, string])[] = [
  [/iPad/, "an iPad"],
  [/iPhone/, "an iPhone"],
  [/Android(?!.*Mobile)/, "an Android tablet"],
  [/Android/, "an Android phone"],
  [/CrOS/, "a Chromebook"],
  [/Windows/, "Windows"],
  [/Mac OS X/, "a Mac"],
  [/Linux/, "Linux"],
];

/** A device in words, from how its browser names itself; only a help to tell one's own devices apart. */
export function describeDevice(userAgent: string): string {
  const browser = BROWSERS.find(([pattern]) => pattern.test(userAgent))?.[1] ?? "A browser";
  const system = SYSTEMS.find(([pattern]) => pattern.test(userAgent))?.[1] ?? "an unknown device";
  return `${browser} on ${system}`;
}
