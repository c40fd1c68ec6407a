/** A file that is sent while it is made. Its name has letters, digits, dots, hyphens and underscores only. */
export function answerStream({
  name,
  form,
  chunks,
}: {
  readonly name: string;
  readonly form: "json" | "csv" | "xapi";
  readonly chunks: AsyncGenerator<string>;
}): Response {
  const encoder = new TextEncoder();
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await chunks.next();
      if (done) controller.close();
      else controller.enqueue(encoder.encode(value));
    },
    async cancel() {
      await chunks.return(undefined);
    },
  });
  const type = form === "csv" ? "text/csv; charset=utf-8; header=present" : "application/json";
  const ending = { json: "json", csv: "csv", xapi: "xapi.json" }[form];
  return new Response(body, {
    headers: {
      "cache-control": "no-store",
      "content-type": type,
      "content-disposition": `attachment; filename="toeline-${name.replace(/[^\w.-]/g, "-")}.${ending}"`,
    },
  });
}
