import { useEffect } from "react";

const QUESTION =
  "What you changed in this paper is not saved yet. It is kept in this window, and nowhere else. Leave the page all the same?";

/** Asks before a link of the page leads away from what is not saved; closing the window is asked about by the browser. */
export function useLeaveWarning(isUnsaved: boolean): void {
  useEffect(() => {
    if (!isUnsaved) return;
    const ask = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
      if (!link || link.getAttribute("target") === "_blank" || link.getAttribute("href")?.startsWith("#")) return;
      if (event.ctrlKey || event.metaKey || event.shiftKey || window.confirm(QUESTION)) return;
      event.preventDefault();
      event.stopPropagation();
    };
    // before the router sees the click
    document.addEventListener("click", ask, true);
    return () => document.removeEventListener("click", ask, true);
  }, [isUnsaved]);
}
