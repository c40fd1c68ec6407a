import { appendFileSync } from "node:fs";
import { BLUEPRINTS, generateSpecimen } from "@/lib/specimen";
import { expectedMark, PASS_ABILITY, bandOf } from "@/lib/specimen/difficulty";
const [prefix, from, to, out, name] = process.argv.slice(2);
for (let n = Number(from); n < Number(to); n++) {
  const t = process.cpuUsage(); const w = Date.now();
  try {
    const s = generateSpecimen(`${prefix}-${n}`, BLUEPRINTS[(name ?? "practice") as "practice"]);
    const c = process.cpuUsage(t);
    const mark = (face: "cap" | "root") => expectedMark({ face, joint: s.truth.joint, items: s.truth.items.filter((i) => i.face === face), clutter: s.truth.clutter.filter((i) => i.face === face) }, PASS_ABILITY);
    appendFileSync(out, JSON.stringify({ n, ok: true, attempts: s.attempts, cpu: (c.user + c.system) / 1000, wall: Date.now() - w, marks: [mark("cap"), mark("root")], types: s.truth.items.filter((i) => !i.neutral).map((i) => i.type), bands: s.truth.items.filter((i) => !i.neutral).map((i) => bandOf(i)) }) + "\n");
  } catch (e) { appendFileSync(out, JSON.stringify({ n, ok: false, why: String(e) }) + "\n"); }
}
