import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { BLUEPRINTS } from "@/lib/specimen";
import { readBlueprint } from "@/seed/commands/specimen-blueprint";

const folder = mkdtempSync(join(tmpdir(), "blueprint-"));

function fileWith(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe("blueprint of the specimen command", () => {
  it("knows those that come with the tool", () => {
    for (const [name, blueprint] of Object.entries(BLUEPRINTS))
      expect(readBlueprint(name)).toEqual({ ok: true, blueprint });
  });

  it("reads one from a file", () => {
    const path = fileWith("own.json", JSON.stringify(BLUEPRINTS.assessment));
    expect(readBlueprint(path)).toEqual({ ok: true, blueprint: BLUEPRINTS.assessment });
  });

  it.each([
    ["easy", "practice, assessment, final-mock, clean"],
    [join(folder, "missing.json"), "cannot be read as JSON"],
    [fileWith("broken.json", "{"), "cannot be read as JSON"],
    [fileWith("empty.json", "{}"), "joint"],
    [
      fileWith(
        "impossible.json",
        JSON.stringify({
          ...BLUEPRINTS.clean,
          sections: {
            ...BLUEPRINTS.clean.sections,
            root: {
              ...BLUEPRINTS.clean.sections.root,
              cleanLength: 0,
              slots: [{ count: 1, families: ["overlap"], band: "small", place: "plate" }],
            },
          },
        }),
      ),
      "root face, slot 1",
    ],
  ])("%s is refused with the reason", (name, reason) => {
    const answer = readBlueprint(name);
    expect(answer.ok ? "" : answer.message).toContain(reason);
  });
});
