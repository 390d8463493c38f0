/** Packs as they are bought in English: never two numbers side by side that read as a sum. */
import { counted } from '#lib/words/counted-en.ts'

/** "6 x #10 cans": packs in a case. */
const CASE = /^\s*(\d+)\s*[x×]\s*(.+)$/i

/** "1 case of 12 each". */
const ONE_CASE = /^\s*(?:1|an?|one)\s+(?:case|cs)\s+of\s+(.+)$/i

/** "2 cases of 6 × #10 cans"; "1 pack of 25 lb". */
export const sayPacks = (packs: number, packTyped: string): string => {
  const [, many, each] = CASE.exec(packTyped) ?? []
  const [, held] = ONE_CASE.exec(packTyped) ?? []
  if (held !== undefined) return `${counted(packs, 'case', 'cases')} of ${held}`
  return many === undefined || each === undefined
    ? `${counted(packs, 'pack', 'packs')} of ${packTyped}`
    : `${counted(packs, 'case', 'cases')} of ${many} × ${each}`
}
