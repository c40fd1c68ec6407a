/** A CSV file to keep. Its name has letters, digits, dots, hyphens and underscores only, so that it needs no escaping. */
export function answerFile({ name, text }: { readonly name: string; readonly text: string }): Response {
  return new Response(text, {
    headers: {
      "cache-control": "no-store",
      "content-type": "text/csv; charset=utf-8; header=present",
      "content-disposition": `attachment; filename="toeline-${name.replace(/[^\w.-]/g, "-")}.csv"`,
    },
  });
}
