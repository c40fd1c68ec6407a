"use client";

import { useEffect, useId, useRef, useState, useSyncExternalStore } from "react";
import { createPortal } from "react-dom";
import { Button } from "@/app/_ui/button";
import { copyText } from "@/app/_ui/copy-text";
import { Field } from "@/app/_ui/field";
import { isOnlyThisComputer, readAddress, type SignInSlip } from "@/lib/workshop";
import { Slip } from "./slip";
import "./slips.css";

interface SlipsPanelProps {
  readonly slips: readonly SignInSlip[];
  readonly workshop: string;
  /** Of the workshop, where whoever runs it has named one. */
  readonly publicAddress: string | null;
  /** What just happened, in a sentence. */
  readonly told: string;
}

const A_PAGE = 8;
const never = () => () => undefined;

/**
 * One-time codes, this once: to print as slips, or to note down. It takes the focus, so that it is read out and cannot be
 * scrolled past.
 */
export function SlipsPanel({ slips, workshop, publicAddress, told }: SlipsPanelProps) {
  const panel = useRef<HTMLElement>(null);
  const table = useRef<HTMLTableElement>(null);
  const title = useId();
  // a form that is sent before the page is alive is answered by a page drawn on the server
  const here = useSyncExternalStore(
    never,
    () => location.origin,
    () => null,
  );
  const [edited, setTyped] = useState<string | null>(null);
  const typed = edited ?? publicAddress ?? here ?? "";
  const [copying, setCopying] = useState("");
  useEffect(() => panel.current?.focus(), []);
  const address = readAddress(typed);

  const copy = async () => {
    const isCopied = table.current !== null && (await copyText(table.current));
    setCopying(isCopied ? "Copied." : "This browser does not copy by itself: the codes are selected, copy them now.");
  };

  return (
    <section
      ref={panel}
      tabIndex={-1}
      aria-labelledby={title}
      className="mt-4 rounded-md border-2 border-found bg-sheet p-5"
    >
      <h2 id={title} className="font-semibold">
        {slips.length === 1 ? "One sign-in slip" : `${slips.length} sign-in slips`}
      </h2>
      <div role="status">
        <p className="mt-2 max-w-3xl">
          {told}{" "}
          <strong>
            {slips.length === 1 ? "The code is" : "The codes are"} shown this once: print or note{" "}
            {slips.length === 1 ? "it" : "them"} before you leave this page.
          </strong>{" "}
          Nobody can read {slips.length === 1 ? "it" : "them"} later, only make new ones. Whoever signs in with a code
          chooses a password of their own first.
        </p>
      </div>
      <table ref={table} className="mt-3 text-left">
        <thead className="text-sm text-ink-2">
          <tr>
            <th className="py-1 pr-6 font-medium">Name</th>
            <th className="py-1 pr-6 font-medium">Sign-in name</th>
            <th className="py-1 font-medium">One-time code</th>
          </tr>
        </thead>
        <tbody>
          {slips.map(({ name, signInName, code }) => (
            <tr key={signInName} className="border-t border-line">
              <th scope="row" className="py-1 pr-6 font-medium wrap-anywhere">
                {name}
              </th>
              <td className="py-1 pr-6 font-mono wrap-anywhere">{signInName}</td>
              <td className="py-1 font-mono whitespace-nowrap">{code}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="mt-4 max-w-xl">
        <Field
          name="address"
          label="Address on the slips"
          inputMode="url"
          autoCapitalize="none"
          spellCheck={false}
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
          hint={
            address && isOnlyThisComputer(address)
              ? "This one opens Toeline on this very computer only. For tablets write the address on your network that Toeline named when it was started, for example http://192.168.1.20:3000."
              : "What learners type, and where the QR codes lead."
          }
          problem={address || !here ? undefined : "Write an address such as http://192.168.1.20:3000."}
        />
      </div>
      <p className="mt-4 flex flex-wrap items-center gap-3">
        <Button onClick={() => window.print()} disabled={!address}>
          Print the slips
        </Button>
        <Button look="quiet" onClick={copy}>
          Copy the table
        </Button>
        <span role="status">{copying}</span>
      </p>
      {here && address && <PrintedSlips slips={slips} workshop={workshop} address={address} />}
    </section>
  );
}

interface PrintedSlipsProps {
  readonly slips: readonly SignInSlip[];
  readonly workshop: string;
  readonly address: string;
}

/** What the printer gets, beside the page and in place of it. */
function PrintedSlips({ slips, workshop, address }: PrintedSlipsProps) {
  const pages = Array.from({ length: Math.ceil(slips.length / A_PAGE) }, (_, page) =>
    slips.slice(page * A_PAGE, (page + 1) * A_PAGE),
  );
  return createPortal(
    <div className="slips-print">
      {pages.map((page, index) => (
        <div key={page[0].signInName} className="slips-page">
          <p className="slips-head">
            Sign-in slips of {workshop}, page {index + 1} of {pages.length}. Cut along the dashed lines. Each slip opens
            one account: hand it to its owner only, and keep no copy.
          </p>
          <div className="slips">
            {page.map((slip) => (
              <Slip key={slip.signInName} slip={slip} workshop={workshop} address={address} />
            ))}
          </div>
        </div>
      ))}
    </div>,
    document.body,
  );
}
