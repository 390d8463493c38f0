/** What is said of each item, against every change tried out. */
import type { Item, StationDocument } from '#lib/station/station-document.ts'
import type { Asking } from '#tests/lib/needs/oracle/asked.ts'
import type { Checker } from '#tests/lib/needs/oracle/checker.ts'
import type { Found } from '#tests/lib/needs/oracle/found.ts'
import type { Place } from '#tests/lib/needs/oracle/oracle.ts'
import { sayCase } from '#tests/lib/needs/oracle/said-case.ts'
import {
  type Change,
  createSearch,
  type Expected,
  sizeOf,
  usualParts,
} from '#tests/lib/needs/oracle/smallest-change.ts'
import { FINE } from '#tests/lib/needs/oracle/table.ts'
import type { Verdict } from '#tests/support/counter-verdicts.ts'

interface Search {
  readonly item: Item
  readonly search: ReturnType<typeof createSearch>
}

export const searchesOf = (station: StationDocument): readonly Search[] =>
  station.items.map((item) => ({ item, search: createSearch(item) }))

const WORST_FIRST = ['no', 'ask', 'with-change', 'fits']

const sayChanges = (changes: readonly Change[]): string =>
  changes
    .map(({ leaveOut, base }) => `without ${[...leaveOut].sort()} on ${base}`)
    .sort()
    .join(' or ')

const offered = (item: Item, { leaveOut, bases }: Verdict): readonly Change[] =>
  (bases ?? [item.base?.usual ?? null]).map((base) => ({ leaveOut, base }))

/** Why the findings don't say why; null where they do. */
const unexplained = (item: Item, verdict: Verdict, asking: Asking): string | null => {
  const { kind, findings, leaveOut, bases } = verdict
  const own = new Set([...item.parts.map((one) => one.component), ...(item.base?.choices ?? [])])
  if (findings.some((one) => !own.has(one.component))) return 'names a component of another item'
  const untrue = asking.untrue(findings)
  if (untrue !== null) return untrue
  if (kind === 'no' && !findings.some((one) => one.level === 'no')) return 'rules out without why'
  if (kind === 'with-change') {
    const changed = [...leaveOut, ...(bases === null || !item.base ? [] : [item.base.usual])]
    const silent = changed.find(
      (id) => !findings.some((one) => one.component === id && one.level !== 'note'),
    )
    if (silent !== undefined) return `changes ${silent} without why`
  }
  if (kind !== 'ask') return null
  const stays = [
    ...usualParts(item).filter((id) => !leaveOut.includes(id)),
    ...(bases === null && item.base ? [item.base.usual] : []),
  ]
  for (const id of stays) {
    const named = asking.cells(id).reduce((sum, { named: bits }) => {
      let count = 0
      for (let left = bits; left > 0; left >>= 1) count += left & 1
      return sum + count
    }, 0)
    const told = findings.filter((one) => one.component === id && one.level !== 'note').length
    if (told !== named) return `tells ${told} of ${named} that are to be accepted of ${id}`
  }
  return null
}

const isBackupTrue = (item: Item, verdict: Verdict, asking: Asking): boolean => {
  const { leaveOut, bases, fromBackup, kind } = verdict
  if (kind === 'no') return true
  const stays = usualParts(item).filter((id) => !leaveOut.includes(id))
  if (bases === null && item.base) stays.push(item.base.usual)
  const expected = stays.filter(asking.isFromBackup)
  const told = fromBackup.filter((id) => !bases?.includes(id))
  return (
    expected.length === told.length &&
    expected.every((id) => told.includes(id)) &&
    fromBackup.every(asking.isFromBackup)
  )
}

const compareOne = (
  item: Item,
  verdict: Verdict,
  expected: Expected,
  asking: Asking,
  about: () => string,
  found: Found,
): void => {
  const oracle = () =>
    `${verdict.kind} ${sayChanges(offered(item, verdict))}, the oracle ${expected.kind} ${sayChanges(expected.changes)}`
  if (verdict.kind !== expected.kind) {
    const isSofter = WORST_FIRST.indexOf(verdict.kind) > WORST_FIRST.indexOf(expected.kind)
    found.disagree(
      isSofter
        ? 'unsafe accepted'
        : expected.kind === 'ask'
          ? 'verdict otherwise'
          : 'fitting refused',
      () => `${about()}: ${oracle()}`,
    )
    return
  }
  if (verdict.kind !== 'no') {
    const changes = offered(item, verdict)
    const size = Math.max(...changes.map((one) => sizeOf(item, one)))
    const smallest = Math.max(...expected.changes.map((one) => sizeOf(item, one)))
    if (size > smallest)
      found.disagree('change larger than needed', () => `${about()}: ${oracle()}`)
    else if (sayChanges(changes) !== sayChanges(expected.changes)) {
      const taken = changes.flatMap(({ leaveOut, base }) => [
        ...usualParts(item).filter((id) => !leaveOut.includes(id)),
        ...(base === null ? [] : [base]),
      ])
      const isUnsafe = verdict.kind !== 'ask' && taken.some((id) => asking.rank(id) < FINE)
      found.disagree(
        isUnsafe ? 'unsafe accepted' : 'verdict otherwise',
        () => `${about()}: ${oracle()}`,
      )
    }
  }
  const why = unexplained(item, verdict, asking)
  if (why !== null)
    found.disagree('named otherwise', () => `${about()}: verdict ${verdict.kind} ${why}`)
  if (!isBackupTrue(item, verdict, asking))
    found.disagree('back-up otherwise', () => `${about()}: verdict [${verdict.fromBackup}]`)
}

export const compareVerdicts = (
  place: Place,
  asking: Asking,
  searches: readonly Search[],
  checker: Checker,
  found: Found,
): void => {
  const verdicts = checker.verdictsFor(place, asking.needs)
  for (const { item, search } of searches) {
    found.counts.verdicts += 1
    const about = () => sayCase(place, asking.needs, item.id)
    const verdict = verdicts[item.id]
    if (verdict) compareOne(item, verdict, search(asking.rank), asking, about, found)
    else found.disagree('thrown', () => `${about()}: no verdict`)
  }
}
