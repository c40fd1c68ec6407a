import { z } from "zod";

/** A whole number; the message says from where to where. */
export const whole = (field: string, least: number, most: number) => {
  const error = `${field}: a whole number from ${least} to ${most}`;
  return z.int({ error }).min(least, error).max(most, error);
};

/** 1 to `most` characters after trimming. */
export const text = (field: string, most: number) => {
  const error = `${field}: 1 to ${most} characters`;
  return z.string({ error }).trim().min(1, error).max(most, error);
};

export const oneOf = (field: string, all: readonly string[]) => ({ error: `${field}: one of ${all.join(", ")}` });

/** Parameters of an object's schema, so that its messages say which fields there are. */
export const fields = (name: string, of: string) => ({
  error: (issue: { readonly code?: string; readonly keys?: readonly string[] }): string =>
    issue.code === "unrecognized_keys"
      ? `${name}: no field named ${(issue.keys ?? []).join(", ")}; the fields are ${of}`
      : `${name}: an object with ${of}`,
});
