/** What stands in a cell or beside a term of a print: words, or a time that the reader's own clock puts into words. */
export type Printed = string | Date;

/** Terms with what is to be said of each, such as who and when. */
export interface FactsBlock {
  readonly kind: "facts";
  readonly facts: readonly (readonly [term: string, said: Printed])[];
}

/** A table with its heading, which every page that it goes over repeats. */
export interface TableBlock {
  readonly kind: "table";
  readonly title: string;
  /** A column of numbers stands to the right. */
  readonly columns: readonly { readonly name: string; readonly isNumber?: true }[];
  readonly rows: readonly (readonly Printed[])[];
  /** Said in place of a table without rows. */
  readonly empty: string;
}

/** Lines to sign and date by hand. */
export interface SignaturesBlock {
  readonly kind: "signatures";
  readonly of: readonly string[];
}

/** One part of a print, whatever draws it. */
export type Block = FactsBlock | TableBlock | SignaturesBlock;
