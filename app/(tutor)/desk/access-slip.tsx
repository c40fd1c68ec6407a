"use client";

import { useEffect, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { copyText } from "@/app/_ui/copy-text";
import type { NewAccess } from "./actions";

/** A new password, this once. It takes the focus, so that it is read out and cannot be scrolled past. */
export function AccessSlip({ access }: { readonly access: NewAccess }) {
  const slip = useRef<HTMLDivElement>(null);
  const password = useRef<HTMLElement>(null);
  const [copying, setCopying] = useState("");
  useEffect(() => slip.current?.focus(), []);

  const copy = async () => {
    const isCopied = password.current !== null && (await copyText(password.current));
    setCopying(isCopied ? "Copied." : "This browser does not copy by itself: the password is selected, copy it now.");
  };

  return (
    <div
      ref={slip}
      tabIndex={-1}
      role="status"
      className="mt-3 rounded border-l-4 border-found bg-paper-2 px-4 py-3 text-sm wrap-anywhere"
    >
      <p>
        {access.name} signs in as <strong className="font-mono">{access.signInName}</strong> with the password{" "}
        <strong ref={password} className="font-mono whitespace-nowrap">
          {access.password}
        </strong>
        . It is shown this once: note it down now.
        {access.asked === "new-password" && " The password before it works no more."}
      </p>
      <p className="mt-2 flex flex-wrap items-center gap-3">
        <Button look="quiet" onClick={copy}>
          Copy the password
        </Button>
        {copying}
      </p>
    </div>
  );
}
