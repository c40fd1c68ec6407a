interface Column {
  readonly name: string;
  readonly width: string;
}

const WIDE: readonly Column[] = [
  { name: "No.", width: "8mm" },
  { name: "What it is", width: "auto" },
  { name: "From", width: "12mm" },
  { name: "To", width: "12mm" },
  { name: "Across", width: "13mm" },
  { name: "Size", width: "11mm" },
  { name: "Sentence", width: "17mm" },
];
const NARROW: readonly Column[] = [
  { name: "No.", width: "8mm" },
  { name: "What and where", width: "auto" },
  { name: "Size", width: "11mm" },
  { name: "Sentence", width: "17mm" },
];

/** Lines to write on by hand what is found, as in the report; fewer columns beside a long picture. */
export function FindingsLines({ count, isNarrow }: { readonly count: number; readonly isNarrow: boolean }) {
  const columns = isNarrow ? NARROW : WIDE;
  return (
    <table className="paper-table table-fixed">
      <colgroup>
        {columns.map(({ name, width }) => (
          <col key={name} style={{ width }} />
        ))}
      </colgroup>
      <thead>
        <tr>
          {columns.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: count }, (_, n) => n).map((n) => (
          <tr key={n} className="h-[9mm]">
            {columns.map(({ name }) => (
              <td key={name} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
