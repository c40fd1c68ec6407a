"use client";

import type { ComponentProps } from "react";
import { useFormStatus } from "react-dom";

const LOOKS = {
  main: "border border-transparent bg-action text-white hover:bg-action-2",
  lamp: "border border-transparent bg-lamp text-ink hover:brightness-95",
  dark: "border border-bench-dim text-bench-text hover:bg-bench-2",
  /** What cannot be taken back. */
  final: "border border-transparent bg-missed text-white hover:brightness-90",
  quiet: "border border-ink-2 bg-sheet text-ink hover:bg-paper-2",
} as const;

interface ButtonProps extends Omit<ComponentProps<"button">, "className"> {
  readonly look?: keyof typeof LOOKS;
  readonly isLarge?: boolean;
}

/** A button; the one that sends a form is out of use while the form is on its way. */
export function Button({ look = "main", isLarge = false, type = "button", disabled, ...button }: ButtonProps) {
  const { pending } = useFormStatus();
  return (
    <button
      {...button}
      type={type}
      disabled={disabled || (type === "submit" && pending)}
      className={`cursor-pointer rounded font-medium disabled:cursor-wait disabled:opacity-60 ${LOOKS[look]} ${isLarge ? "px-8 py-4 text-lg" : "min-h-11 px-5 py-2"}`}
    />
  );
}
