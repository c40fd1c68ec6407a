/** Why no piece is chosen for somebody just now: they are in a sitting, or have never practised and need not. */
export type NotChosen = "in-sitting" | "no-practice";
