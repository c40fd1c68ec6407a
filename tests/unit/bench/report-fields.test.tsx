// @vitest-environment happy-dom
import { act, type ReactNode } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { NumberField } from "@/app/_bench/report/number-field";
import { TypePicker } from "@/app/_bench/report/type-picker";

let root: Root;

beforeEach(() => {
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  document.body.innerHTML = "<div></div>";
  root = createRoot(document.body.firstElementChild as HTMLElement);
});
afterEach(() => {
  act(() => root.unmount());
  vi.unstubAllGlobals();
});

const show = (node: ReactNode) => act(() => root.render(node));
const field = () => document.querySelector("input") as HTMLInputElement;

function type(text: string) {
  act(() => {
    // React watches the value by its own setter, so the element's must be called
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(field(), text);
    field().dispatchEvent(new Event("input", { bubbles: true }));
  });
}

const press = (key: string) =>
  act(() => {
    field().dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
  });
const options = () => [...document.querySelectorAll('[role="option"]')].map((option) => option.textContent);

describe("what it is", () => {
  it("takes the best fit of two letters with Enter", () => {
    const onChange = vi.fn();
    show(<TypePicker face="cap" value={null} onChange={onChange} />);
    type("ov");
    expect(options()[0]).toContain("Overlap");
    press("Enter");
    expect(onChange).toHaveBeenCalledExactlyOnceWith("overlap");
  });

  it("goes through what is offered with the arrows and leaves off with Escape", () => {
    const onChange = vi.fn();
    show(<TypePicker face="cap" value={null} onChange={onChange} />);
    type("undercut");
    press("ArrowDown");
    press("Enter");
    expect(onChange).toHaveBeenLastCalledWith("intermittent-undercut");
    type("crack");
    press("Escape");
    expect(options()).toEqual([]);
    expect(onChange).toHaveBeenCalledTimes(1);
  });

  it("offers everything of the face by family when nothing is typed", () => {
    show(<TypePicker face="root" value="root-concavity" onChange={() => {}} />);
    expect(field().value).toBe("Root concavity (515)");
    press("ArrowDown");
    expect(document.querySelectorAll('[role="group"]').length).toBeGreaterThan(5);
    expect(document.querySelector('[aria-selected="true"]')?.textContent).toContain("Root concavity");
  });

  it("takes a tap, and its Escape closes the list and nothing around it", () => {
    const onChange = vi.fn();
    const around = vi.fn();
    show(
      // biome-ignore lint/a11y/noStaticElementInteractions: stands for the panel around the form
      <div onKeyDown={({ key }) => around(key)}>
        <TypePicker face="cap" value={null} onChange={onChange} />
      </div>,
    );
    type("ov");
    press("Escape");
    expect([options(), around.mock.calls]).toEqual([[], []]);
    press("Escape");
    expect(around).toHaveBeenCalledExactlyOnceWith("Escape");
    type("ov");
    act(() => (document.querySelector('[role="option"]') as HTMLElement).click());
    expect(onChange).toHaveBeenCalledExactlyOnceWith("overlap");
  });

  it("says so when nothing fits", () => {
    show(<TypePicker face="root" value={null} onChange={() => {}} />);
    type("undercut");
    expect(document.body.textContent).toContain("Nothing on this face is called that.");
  });
});

describe("a number", () => {
  const shown = (value: number | null, onChange: (value: number | null) => void) =>
    show(<NumberField label="From" value={value} min={0} max={300} onChange={onChange} onLeave={() => {}} />);

  it("takes a point or a comma, and nothing for blank", () => {
    const onChange = vi.fn();
    shown(null, onChange);
    type("12,5");
    expect(onChange).toHaveBeenLastCalledWith(12.5);
    type("7.25");
    expect(onChange).toHaveBeenLastCalledWith(7.25);
    type("");
    expect(onChange).toHaveBeenLastCalledWith(null);
  });

  it("does not keep what is no number or out of range, and says why", () => {
    const onChange = vi.fn();
    shown(4, onChange);
    type("12x");
    expect(document.body.textContent).toContain("Write a number");
    expect(field().getAttribute("aria-invalid")).toBe("true");
    type("301");
    expect(document.body.textContent).toContain("From 0 to 300 mm.");
    expect(onChange).not.toHaveBeenCalled();
  });

  it("says what was not taken once the field is left, until it is written in again", () => {
    shown(84, () => {});
    type("999");
    act(() => {
      field().dispatchEvent(new FocusEvent("focusout", { bubbles: true }));
    });
    expect(field().value).toBe("84");
    expect(document.body.textContent).toContain("“999” was not taken: from 0 to 300 mm.");
    type("85");
    expect(document.body.textContent).not.toContain("was not taken");
  });

  it("leaves what is being typed alone while it means the value it has", () => {
    shown(12, () => {});
    type("12.0");
    shown(12, () => {});
    expect(field().value).toBe("12.0");
    shown(13, () => {});
    expect(field().value).toBe("13");
  });
});
