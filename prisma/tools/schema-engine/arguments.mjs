/** The part of the native engine's command line that Prisma uses. */
export function readArguments(words) {
  const settings = { datamodels: [], url: undefined, command: undefined, wantsVersion: false };
  for (let i = 0; i < words.length; i++) {
    const word = words[i];
    if (word === "--version" || word === "-V") settings.wantsVersion = true;
    else if (word === "--datamodels") settings.datamodels.push(words[++i]);
    else if (word === "--datasource") settings.url = JSON.parse(words[++i]).url;
    else if (word === "cli") settings.command = words[++i];
    else if (word.startsWith("--")) i++;
  }
  return settings;
}
