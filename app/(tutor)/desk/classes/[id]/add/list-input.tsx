import { type DragEvent, useId, useState } from "react";
import { decodeList, LIST_MAX_LENGTH } from "@/lib/classes";

interface ListInputProps {
  readonly list: string;
  readonly setList: (list: string) => void;
  readonly problem?: string;
}

/** A list to paste, to type, or to take from a file that is chosen or dropped; the file's text can then be put right here. */
export function ListInput({ list, setList, problem }: ListInputProps) {
  const id = useId();
  const [isOver, setOver] = useState(false);
  const [fileNote, setFileNote] = useState("");

  const take = async (file: File | undefined) => {
    if (!file) return;
    if (file.size > 4 * LIST_MAX_LENGTH || /\.(xlsx?|ods|pdf|docx?)$/i.test(file.name)) {
      setFileNote(
        `${file.name} is no list in plain text, so it was not read. Save the table as CSV and take that file.`,
      );
      return;
    }
    setList(decodeList(new Uint8Array(await file.arrayBuffer())));
    setFileNote(`${file.name} is read in. Nothing is stored yet.`);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    take(event.dataTransfer.files[0]);
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file is a second way beside the button that chooses one
    <div
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
      className={`mt-3 rounded ${isOver ? "outline-3 outline-offset-4 outline-action outline-dashed" : ""}`}
    >
      <label htmlFor={id} className="block text-sm font-medium">
        One learner a line
      </label>
      <textarea
        id={id}
        value={list}
        onChange={({ target }) => setList(target.value)}
        rows={8}
        spellCheck={false}
        autoComplete="off"
        aria-describedby={`${id}-hint${problem ? ` ${id}-problem` : ""}`}
        aria-invalid={problem ? true : undefined}
        placeholder={"Noor Beck\nTomás Núñez; tomas.n"}
        className="mt-1 w-full rounded border border-ink-2 bg-white px-3 py-2 font-mono text-sm aria-invalid:border-2 aria-invalid:border-missed"
      />
      {problem && (
        <p id={`${id}-problem`} className="mt-1 text-sm font-medium text-missed">
          {problem}
        </p>
      )}
      <p id={`${id}-hint`} className="mt-1 max-w-3xl text-sm text-ink-2">
        The name, and after a semicolon, comma or tab a sign-in name if you want a certain one; otherwise one is made of
        the name. A first line with the headings "name" and "sign-in name" may stand above. Paste from a table, or drop
        a CSV file here.
      </p>
      <div className="mt-2 flex flex-wrap items-center gap-3">
        <label className="inline-flex min-h-11 cursor-pointer items-center rounded border border-ink-2 bg-sheet px-5 font-medium focus-within:outline-3 focus-within:outline-lamp hover:bg-paper-2">
          Take a CSV file
          <input
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            className="sr-only"
            onChange={({ target }) => {
              take(target.files?.[0]);
              // the same file may be taken again after it was put right
              target.value = "";
            }}
          />
        </label>
        <span role="status" className="text-sm wrap-anywhere">
          {fileNote}
        </span>
      </div>
    </div>
  );
}
