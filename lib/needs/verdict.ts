/** Whether an item fits a guest, or with which smallest change. */
import type { Item } from '#lib/menu/station-document.ts'
import type { Need } from '#lib/needs/codes.ts'
import { type Finding, judgeComponent, RANK, strictest } from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'

export interface Verdict {
  readonly item: string
  /** `ask`: what can't be left out has cautions that the person in charge may accept. */
  readonly kind: 'fits' | 'with-change' | 'ask' | 'no'
  /** Usual parts that it goes without. */
  readonly leaveOut: readonly string[]
  /** Bases that fit equally where the usual one doesn't: the guest chooses. null: it stays. */
  readonly bases: readonly string[] | null
  /** What parts are left out for, what is to be accepted, or what rules the item out; worst first. */
  readonly findings: readonly Finding[]
  /** Components of the changed build that are taken from their protected back-up pans. */
  readonly fromBackup: readonly string[]
}

/** What is said of a component in a verdict: what is worse than a note. */
interface Known {
  readonly rank: number
  readonly findings: readonly Finding[]
  readonly fromBackup: boolean
}

type Judge = (component: string) => Known

const NOTE = RANK.note

/** The best of the choices, all that are equal; those that fit are equal. */
const bestBases = (choices: readonly string[], judge: Judge): readonly string[] => {
  const standing = (id: string) => Math.min(judge(id).rank, NOTE)
  const best = Math.max(...choices.map(standing))
  return choices.filter((one) => standing(one) === best)
}

const worstFirst = (found: readonly Known[]): readonly Finding[] => {
  const sorted: Finding[] = []
  for (const level of ['no', 'caution', 'ask'] as const)
    for (const { findings } of found)
      for (const one of findings) if (one.level === level) sorted.push(one)
  return sorted
}

const verdictOf = (item: Item, judge: Judge): Verdict => {
  const leaveOut: string[] = []
  const fromBackup: string[] = []
  const out: Known[] = []
  const kept: Known[] = []
  const take = (component: string, known: Known) => {
    if (known.fromBackup) fromBackup.push(component)
  }
  const usualBase = item.base?.usual ?? null
  const best = item.base ? bestBases(item.base.choices, judge) : []
  const base = usualBase === null || best.includes(usualBase) ? usualBase : (best[0] ?? null)
  if (base !== null) {
    kept.push(judge(base))
    take(base, judge(base))
  }
  for (const part of item.parts) {
    const stays = part.required || part.component === item.heart
    if (!stays && part.usual === 'no') continue
    const known = judge(part.component)
    if (!stays && known.rank < NOTE) {
      leaveOut.push(part.component)
      out.push(known)
      continue
    }
    if (stays) kept.push(known)
    take(part.component, known)
  }
  let worst = NOTE
  for (const { rank } of kept) worst = Math.min(worst, rank)
  const bases = base === usualBase ? null : best
  const isChanged = leaveOut.length > 0 || bases !== null
  const kind = worst === RANK.no ? 'no' : worst < NOTE ? 'ask' : isChanged ? 'with-change' : 'fits'
  if (kind === 'with-change' && bases !== null && usualBase !== null) out.push(judge(usualBase))
  return {
    item: item.id,
    kind,
    leaveOut,
    bases,
    findings: worstFirst(kind === 'with-change' ? out : kept),
    fromBackup,
  }
}

/**
 * Every item's verdict for one guest, from labels and contact alone: what the pans still hold is
 * for the caller to add. Component by component, so that the smallest change is the set of usual
 * optional parts that don't fit, and the base where the usual one doesn't.
 * @throws where the document is damaged; then nothing is known, and nothing may be served.
 */
export const verdictsFor = (
  kitchen: Kitchen,
  needs: readonly Need[],
): Readonly<Record<string, Verdict>> => {
  const strict = strictest(needs)
  const byComponent = new Map<string, Known>()
  const judge: Judge = (component) => {
    const before = byComponent.get(component)
    if (before) return before
    const { level, findings, fromBackup } = judgeComponent(kitchen, component, strict)
    const known = {
      rank: RANK[level],
      findings: findings.filter((one) => one.level !== 'note'),
      fromBackup,
    }
    byComponent.set(component, known)
    return known
  }
  return Object.fromEntries(kitchen.station.items.map((item) => [item.id, verdictOf(item, judge)]))
}
