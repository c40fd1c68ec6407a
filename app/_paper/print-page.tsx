"use client";
import { Button } from "@/app/_ui/button";

/** Prints the page as it stands; what is only for the screen stays away. */
export function PrintPage() {
  return (
    <Button look="quiet" onClick={() => window.print()}>
      Print
    </Button>
  );
}
