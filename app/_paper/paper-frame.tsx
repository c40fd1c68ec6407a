import type { ReactNode } from "react";
import { PaperBar } from "./paper-bar";
import "./paper.css";

interface PaperFrameProps {
  readonly title: string;
  /** Whose it is and of what, beside the title on every page. */
  readonly of: ReactNode;
  readonly back: { readonly href: string; readonly name: string };
  /** Across the long side of the paper. */
  readonly isFlat?: boolean;
  /** What is still being made, in a sentence, or why it cannot be; null when all is there to print. */
  readonly waitsFor?: string | null;
  readonly children: ReactNode;
}

const CAUTION =
  "Practice only: this certifies nobody and qualifies for nothing. On real work follow the governing code, the contract, the written procedure and the decision of a qualified inspector.";

/** A print as it will lie on paper: its heading and the caution on every page, and over it, on the screen alone, what to do. */
export function PaperFrame({ title, of, back, isFlat = false, waitsFor = null, children }: PaperFrameProps) {
  return (
    <>
      <PaperBar title={title} back={back} waitsFor={waitsFor} />
      {/* on a narrow screen a flat page scrolls, and what scrolls has to be reached by the keyboard */}
      <main id="main" tabIndex={isFlat ? 0 : -1} className="paper-bench outline-none">
        <div className={`paper ${isFlat ? "paper-flat" : ""}`}>
          <table className="paper-frame" role="presentation">
            <thead>
              <tr>
                <td>
                  <div className="paper-head">
                    <h1>
                      <strong>{title}</strong>
                    </h1>
                    <p className="text-right">{of}</p>
                  </div>
                </td>
              </tr>
            </thead>
            <tbody>
              <tr>
                <td>{children}</td>
              </tr>
            </tbody>
            <tfoot>
              <tr>
                <td>
                  <p className="paper-foot">
                    <strong>Toeline</strong> {CAUTION}
                  </p>
                </td>
              </tr>
            </tfoot>
          </table>
        </div>
      </main>
    </>
  );
}
