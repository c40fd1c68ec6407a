const COLUMNS = ["No.", "What it is", "From", "To", "Across", "Size", "Sentence"] as const;
const WIDTHS = ["8mm", "auto", "12mm", "12mm", "13mm", "11mm", "17mm"] as const;

/** Lines to write on by hand what is found, as in the report; mm. */
export function FindingsLines({ count }: { readonly count: number }) {
  return (
    <table className="paper-table table-fixed">
      <colgroup>
        {WIDTHS.map((width, column) => (
          <col key={COLUMNS[column]} style={{ width }} />
        ))}
      </colgroup>
      <thead>
        <tr>
          {COLUMNS.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: count }, (_, n) => n).map((n) => (
          <tr key={n} className="h-[9mm]">
            {COLUMNS.map((name) => (
              <td key={name} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
