"use client";
import { useEffect, useState } from "react";

/** Says a text to a screen reader once it has stood still for a moment. */
export function Spoken({ text }: { text: string }) {
  const [said, setSaid] = useState("");
  useEffect(() => {
    const timer = setTimeout(() => setSaid(text), 300);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <p aria-live="polite" className="sr-only">
      {said}
    </p>
  );
}
