/** What "free from …" reaches: the words that stand directly behind it, and no further. */
import type { Match } from '#lib/station/label-words/matches.ts'
import type { Statement } from '#lib/station/label-words/statements.ts'

export interface Reach {
  readonly from: number
  readonly to: number
  /** Directly behind its words, of the whole product; else it is asked what is meant. */
  readonly isDeclared: boolean
}

const LINK = /^(?:and|or|nor|any|the|both|added|all|other|major|allergens?|nuts?)(?![a-z])/
const JOINS = /(?:^|[^a-z])(?:and|or|nor|any|from|of|no|contains?|without)$/

/**
 * Goes from word to word: what is known, what links. A line that is done, or a word that isn't
 * known ("free from colours, milk …"), ends it: what follows in the sentence is asked.
 */
const chainEnd = (text: string, statement: Statement, matches: readonly Match[]): number => {
  let at = statement.words
  let end = at
  while (at < statement.to) {
    const sign = text[at] ?? ''
    if (sign === '\n' && !JOINS.test(text.slice(statement.from, at))) break
    if (sign === ',' && statement.mode === 'without') break
    if (!/[a-z]/.test(sign)) {
      at++
      continue
    }
    const found = matches
      .filter(({ from, row }) => from === at && row.says !== 'despite')
      .reduce((so, { to }) => Math.max(so, to), 0)
    const link = LINK.exec(text.slice(at, statement.to))?.[0].length ?? 0
    if (found === 0 && link === 0) break
    at = found > 0 ? found : at + link
    if (found > 0) end = found
  }
  return end
}

/** @returns none for a statement that declares nothing free */
export const freeChain = (
  text: string,
  statement: Statement,
  matches: readonly Match[],
): readonly Reach[] => {
  if (statement.mode !== 'free' && statement.mode !== 'without') return []
  const end = chainEnd(text, statement, matches)
  const declared = { from: statement.words, to: end, isDeclared: !statement.inBrackets }
  if (statement.mode === 'without') return [declared]
  return [declared, { from: end, to: statement.to, isDeclared: false }]
}
