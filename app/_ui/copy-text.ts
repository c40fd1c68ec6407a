/**
 * Copies the text of an element; false where the browser refuses, with the text left selected. The clipboard of today is
 * there for pages over TLS only, and a workshop's server often has none: then the older command does it.
 */
export async function copyText(element: HTMLElement): Promise<boolean> {
  const isWritten = await navigator.clipboard?.writeText(element.textContent).then(
    () => true,
    () => false,
  );
  if (isWritten) return true;
  getSelection()?.selectAllChildren(element);
  return document.execCommand("copy");
}
