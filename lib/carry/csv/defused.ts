/**
 * Cells that a spreadsheet could run: those that begin with = + - @, a tab, a carriage return or a
 * line feed, and the full-width signs of the same: OWASP, CSV Injection.
 */
export const RUNNABLE = /^[=+\-@\t\r\n＝＋－＠]/

const NEEDS_APOSTROPHE = new RegExp(`^'*(?:${RUNNABLE.source.slice(1)})`)

/** An apostrophe in front keeps it text, in a spreadsheet and here; one more where it had one. */
export const defused = (text: string): string => (NEEDS_APOSTROPHE.test(text) ? `'${text}` : text)

/** What was defused, as it was before; other text as it is. */
export const withoutApostrophe = (cell: string): string =>
  cell.startsWith("'") && NEEDS_APOSTROPHE.test(cell) ? cell.slice(1) : cell
