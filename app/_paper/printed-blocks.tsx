import { LocalTime } from "@/app/_ui/local-time";
import type { Block, Printed, TableBlock } from "@/lib/printing";

/** The parts of a print, one under the other. */
export function PrintedBlocks({ blocks }: { readonly blocks: readonly Block[] }) {
  return blocks.map((block) => <PrintedBlock key={block.kind === "table" ? block.title : block.kind} block={block} />);
}

function PrintedBlock({ block }: { readonly block: Block }) {
  switch (block.kind) {
    case "facts":
      return (
        <dl className="paper-facts">
          {block.facts.map(([term, said]) => (
            <FactLine key={term} term={term} said={said} />
          ))}
        </dl>
      );
    case "table":
      return <PrintedTable {...block} />;
    case "signatures":
      return (
        <div className="paper-signatures">
          {block.of.map((name) => (
            <p key={name}>{name}: signature and date</p>
          ))}
        </div>
      );
  }
}

function FactLine({ term, said }: { readonly term: string; readonly said: Printed }) {
  return (
    <>
      <dt>{term}</dt>
      <dd>
        <Said said={said} />
      </dd>
    </>
  );
}

function PrintedTable({ title, columns, rows, empty }: TableBlock) {
  return (
    <section>
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p>{empty}</p>
      ) : (
        <table className="paper-table">
          <thead>
            <tr>
              {columns.map(({ name, isNumber }) => (
                <th key={name} scope="col" className={isNumber && "is-number"}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a print never changes
              <tr key={index}>
                {row.map((cell, column) => (
                  <td key={columns[column].name} className={columns[column].isNumber && "is-number"}>
                    <Said said={cell} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const Said = ({ said }: { readonly said: Printed }) => (said instanceof Date ? <LocalTime at={said} /> : said);
