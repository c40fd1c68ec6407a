/** What may follow the words import, export ... from, require and new URL: one quoted name. */
const PATTERNS = [
  /\bimport\s+["']([^"']+)["']/g,
  /\b(?:import|export)\b[^"';]*?\bfrom\s*["']([^"']+)["']/g,
  /\bimport\s*\(\s*["']([^"']+)["']/g,
  /\brequire\s*\(\s*["']([^"']+)["']/g,
  /\bnew URL\(\s*["'](\.[^"']*\.tsx?)["']\s*,\s*import\.meta\.url/g,
];

/** The names that a source imports, types included: also those of workers, dynamic imports and re-exports. */
export function importedNames(source: string): readonly string[] {
  const code = withoutComments(source);
  return [...new Set(PATTERNS.flatMap((pattern) => Array.from(code.matchAll(pattern), (match) => match[1])))];
}

/** Takes comments away, but not what looks like one inside a string or a template. */
export function withoutComments(source: string): string {
  return source.replace(
    /("(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)|\/\/[^\n]*|\/\*[\s\S]*?\*\//g,
    (_whole, text: string | undefined) => text ?? " ",
  );
}
