/** What one guest asks for, with the oracle's cells for every component. */

import type { Finding } from '#lib/needs/judge.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { bitOf, type Cell, type Table } from '#tests/lib/needs/oracle/table.ts'

export interface Asking {
  readonly needs: readonly Need[]
  /** Worst rank of a component over all needs. */
  readonly rank: (component: string) => number
  readonly isFromBackup: (component: string) => boolean
  readonly cells: (component: string) => readonly Cell[]
  /** Why the findings aren't what the oracle names of these components; null where they are. */
  readonly misnamed: (components: readonly string[], findings: readonly Finding[]) => string | null
  readonly untrue: (findings: readonly Finding[]) => string | null
}

interface Counted {
  readonly need: Need
  readonly index: number
}

const LEVELS = ['no', 'caution', 'ask', 'note', 'ok']

/** Of a code asked twice, the one kept apart counts. */
const strictest = (all: readonly Need[], indexes: readonly number[]): readonly Counted[] => {
  const counted: Counted[] = []
  for (const index of indexes) {
    const need = all[index]
    if (!need) throw new Error('no such need')
    const place = counted.findIndex((one) => one.need.code === need.code)
    if (place < 0) counted.push({ need, index })
    else if (need.handling === 'keep-apart') counted[place] = { need, index }
  }
  return counted
}

const said = ({ component, need, why, level }: Finding): string =>
  `${component} ${need} ${why} ${level}`

const levelOf = (finding: Finding, isBlocked: boolean, noted: number): string => {
  const { why, handling } = finding
  if ((noted & bitOf(why)) !== 0) return 'note'
  if (why === 'contains') return 'no'
  if (handling === 'leave-out') return 'ask'
  return why === 'unknown' || why === 'contact-unknown' || isBlocked ? 'no' : 'caution'
}

export const createAsking = (
  table: Table,
  all: readonly Need[],
  indexes: readonly number[],
  isBlocked: boolean,
): Asking => {
  const counted = strictest(all, indexes)
  const needs = indexes.flatMap((index) => all[index] ?? [])
  const ids = Object.keys(table)
  const byComponent = new Map(
    ids.map((id) => {
      const cells = counted.flatMap(({ index }) => table[id]?.[index] ?? [])
      return [id, { cells, rank: Math.min(4, ...cells.map((one) => one.rank)) }]
    }),
  )
  const cells = (component: string): readonly Cell[] => byComponent.get(component)?.cells ?? []
  const untrueOne = (finding: Finding): boolean => {
    const at = counted.findIndex(
      ({ need }) => need.code === finding.need && need.handling === finding.handling,
    )
    const cell = cells(finding.component)[at]
    return (
      !cell ||
      ((cell.named | cell.noted) & bitOf(finding.why)) === 0 ||
      finding.level !== levelOf(finding, isBlocked, cell.noted)
    )
  }
  const untrue = (findings: readonly Finding[]): string | null => {
    for (const one of findings) if (untrueOne(one)) return `names ${said(one)}`
    return null
  }
  return {
    needs,
    cells,
    untrue,
    rank: (component) => byComponent.get(component)?.rank ?? 0,
    isFromBackup: (component) => cells(component).some((one) => one.fromBackup),
    misnamed: (components, findings) => {
      let before = 0
      let hard = 0
      for (const [place, one] of findings.entries()) {
        if (untrueOne(one) || !components.includes(one.component)) return `names ${said(one)}`
        const rank = LEVELS.indexOf(one.level)
        if (rank < before) return `does not name the worst first: ${said(one)}`
        before = rank
        if (rank < 3) hard += 1
        for (let other = 0; other < place; other += 1) {
          const same = findings[other]
          if (same?.component === one.component && same.need === one.need && same.why === one.why)
            return `names twice ${said(one)}`
        }
      }
      let expected = 0
      for (const component of components) {
        // Out of its own pan nothing that fell into the one on the line is in it, whatever the need.
        const fallen = cells(component).some((one) => one.fromBackup) ? bitOf('soiled') : 0
        for (const { named } of cells(component))
          for (let bits = named & ~fallen; bits > 0; bits >>= 1) expected += bits & 1
      }
      return hard === expected ? null : `names ${hard} of ${expected}`
    },
  }
}
