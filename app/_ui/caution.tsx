/** Stands wherever a mark could be taken for more than it is. */
export function Caution() {
  return (
    <p className="mt-8 max-w-3xl border-l-4 border-lamp bg-paper-2 py-2 pl-4 pr-3 text-sm text-ink-2">
      <strong className="text-ink">Practice only.</strong> These marks certify nobody and qualify for nothing. On real
      work follow the governing code, the contract, the written procedure and the decision of a qualified inspector.
    </p>
  );
}
