const NEEDED = [20, 19];

/** Stops with a plain sentence on a Node.js that is too old. */
export function checkNodeVersion() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major > NEEDED[0] || (major === NEEDED[0] && minor >= NEEDED[1])) return;
  console.error(
    `Toeline needs Node.js ${NEEDED.join(".")} or newer, and this is ${process.versions.node}.\n` +
      "Nothing was changed. Install a newer one from https://nodejs.org and run the command again.",
  );
  process.exit(1);
}
