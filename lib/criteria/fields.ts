/** Parameters of an object's schema, so that its messages say which fields there are: `fields("range", "symbol, from")`. */
export function fields(name: string, of: string) {
  return {
    error: (issue: { readonly code?: string; readonly keys?: readonly string[] }): string =>
      issue.code === "unrecognized_keys"
        ? `${name}: no field named ${(issue.keys ?? []).join(", ")}; the fields are ${of}`
        : `${name}: an object with ${of}`,
  };
}
