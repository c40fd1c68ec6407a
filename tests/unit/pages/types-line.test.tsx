// @vitest-environment happy-dom
import { act, useState } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { draftOf, readDraft, type SectionDraft } from "@/app/(tutor)/desk/papers/_builder/draft";
import { TypesLine } from "@/app/(tutor)/desk/papers/_builder/types-line";
import { defaultPaper } from "@/lib/sittings";

let root: Root;
let now: SectionDraft;

beforeEach(() => {
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
});
afterEach(() => {
  act(() => root.unmount());
  vi.unstubAllGlobals();
});

const draft = draftOf(defaultPaper());

/** The line of a section in a paper that keeps what is changed. */
function Line({ first }: { readonly first: SectionDraft }) {
  const [section, setSection] = useState(first);
  now = section;
  return (
    <TypesLine draft={section} onChange={(types) => setSection({ ...section, piece: { ...section.piece, types } })} />
  );
}
const show = (at: number, piece: Partial<SectionDraft["piece"]> = {}) =>
  act(() => root.render(<Line first={{ ...draft.sections[at], piece: { ...draft.sections[at].piece, ...piece } }} />));
const field = () => document.querySelector("input") as HTMLInputElement;
const type = (text: string) =>
  act(() => {
    // React watches the value by its own setter, so the element's must be called
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(field(), text);
    field().dispatchEvent(new Event("input", { bubbles: true }));
  });
const press = (key: string) =>
  act(() => {
    field().dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
  });
const click = (element: Element | null) => act(() => (element as HTMLElement).click());
const options = () => [...document.querySelectorAll('[role="option"]')].map((option) => option.textContent);
const chips = () => [...document.querySelectorAll("li button")].map((button) => button.textContent);
const said = () => document.querySelector("p[id]")?.textContent;

test("a name or a number is found and taken with Enter, and what is named is not offered again", () => {
  show(0);
  type("root conc");
  press("Enter");
  type("2017");
  expect(options()[0]).toBe("Surface pore2017");
  press("Enter");
  expect(now.piece.types).toEqual({ includes: ["root-concavity", "surface-pore"], among: "any" });
  expect(chips()).toEqual(["Root concavity 515, take off", "Surface pore 2017, take off"]);
  expect(field().value).toBe("");
  type("2017");
  expect(options().join()).not.toContain("Surface pore");
});

test("a tap takes it, a press on its name takes it off, and the field has the focus then", () => {
  show(0);
  click(field());
  click(document.querySelector('[role="option"]'));
  expect(now.piece.types?.includes).toHaveLength(1);
  click(document.querySelector("li button"));
  expect(now.piece.types).toBeUndefined();
  expect(document.activeElement).toBe(field());
  // left empty, the paper is the one that it was
  expect(readDraft({ ...draft, sections: [now, draft.sections[1]] })).toMatchObject({
    ok: true,
    paper: defaultPaper(),
  });
});

test("only what comes on the piece is offered, by arrows as well", () => {
  show(1);
  type("root");
  expect(options()).toEqual(["Incorrect root gap for fillet welds617"]);
  press("Escape");
  expect(options()).toEqual([]);
  press("ArrowDown");
  const all = options().length;
  press("ArrowUp");
  press("Enter");
  expect(now.piece.types?.includes).toHaveLength(1);
  press("ArrowDown");
  expect(options()).toHaveLength(all - 1);
});

test("what a blueprint has no room for is told at the field", () => {
  const types = { includes: ["overlap" as const], among: "any" as const };
  show(0, { blueprint: "clean", types });
  expect(field().getAttribute("aria-invalid")).toBe("true");
  expect(said()).toContain("Nothing is to be found on a clean piece");
  expect(field().getAttribute("aria-describedby")).toBe(document.querySelector("p[id]")?.id);
});
