/** A part of PROTOCOL.md that is written by the program. */

/**
 * A document with what is between the marks of a part written anew.
 * @throws where it hasn't each mark once, the end after the beginning
 */
export const withPart = (document: string, name: string, part: string): string => {
  const begin = `<!-- ${name}: written by \`npm run protocol\` -->`
  const end = `<!-- end of ${name} -->`
  const [before, rest, more] = document.split(`${begin}\n`)
  const after = rest?.split(`\n${end}`)[1]
  if (before === undefined || after === undefined || more !== undefined)
    throw new Error(`PROTOCOL.md must hold ${begin} once, and ${end} after it`)
  return `${before}${begin}\n\n${part}\n\n${end}${after}`
}
