/** Whether a guest can have what is taken: component by component, need by need. */
import type { ContactKind } from '#lib/menu/station-document.ts'
import type { Handling, Need, NeedCode } from '#lib/needs/codes.ts'
import { type Facts, factsOf, type Kitchen } from '#lib/needs/kitchen.ts'

/** `caution` and `ask` are for the person in charge to accept with the guest; nobody accepts `no`. */
export type Level = 'no' | 'caution' | 'ask' | 'note' | 'ok'

/** The worse, the lower. */
export const RANK: Readonly<Record<Level, number>> = { no: 0, caution: 1, ask: 2, note: 3, ok: 4 }

export type Why = 'contains' | 'unknown' | 'may-contain' | 'contact' | 'contact-unknown'

export interface Finding {
  readonly component: string
  readonly need: NeedCode
  readonly handling: Handling
  readonly why: Why
  readonly level: Exclude<Level, 'ok'>
  /** Recipes, then the ingredient that decides it: of the component, or of what it touches. */
  readonly through: readonly string[]
  /** The component that reaches it, for `contact`. */
  readonly touches: string | null
  /** How that begins. */
  readonly contact: ContactKind | null
}

export interface Judged {
  readonly level: Level
  /** The worst first. */
  readonly findings: readonly Finding[]
}

export interface JudgedComponent extends Judged {
  /** It is taken from its protected back-up pan, which clears what reaches the one on the line. */
  readonly fromBackup: boolean
}

export interface JudgedTaken extends Judged {
  /** Components that are taken from their protected back-up pans. */
  readonly fromBackup: readonly string[]
}

/** Fits as it is: a note is said, and stands in nobody's way. */
export const isFine = (level: Level): boolean => level === 'note' || level === 'ok'

type Found = Pick<Finding, 'why' | 'level' | 'through' | 'touches' | 'contact'>

const NOTHING = { through: [], touches: null, contact: null } as const

const contactOf = (touched: NonNullable<Facts['touched']>, level: Found['level']): Found => ({
  why: 'contact',
  level,
  through: touched.declared.through,
  touches: touched.component,
  contact: touched.contact,
})

const NONE: readonly Found[] = []

const keptApart = (facts: Facts, caution: 'caution' | 'no', backup: boolean): readonly Found[] => {
  const { state, through } = facts.declared
  if (state === 'contains' || state === 'unknown')
    return [{ ...NOTHING, why: state, level: 'no', through }]
  if (facts.contactUnknown) return [{ ...NOTHING, why: 'contact-unknown', level: 'no' }]
  const touched = backup ? facts.touchedInBackup : facts.touched
  if (state === 'free') return touched ? [contactOf(touched, caution)] : NONE
  const warned: Found = { ...NOTHING, why: state, level: caution, through }
  return touched ? [warned, contactOf(touched, caution)] : [warned]
}

const leftOut = (facts: Facts): readonly Found[] => {
  const { state, through } = facts.declared
  if (state === 'contains') return [{ ...NOTHING, why: state, level: 'no', through }]
  if (state === 'free' && !facts.contactUnknown && !facts.touched) return NONE
  const found: Found[] = []
  if (state === 'unknown') found.push({ ...NOTHING, why: state, level: 'ask', through })
  if (state === 'may-contain') found.push({ ...NOTHING, why: state, level: 'note', through })
  if (facts.contactUnknown) found.push({ ...NOTHING, why: 'contact-unknown', level: 'note' })
  if (facts.touched) found.push(contactOf(facts.touched, 'note'))
  return found
}

/** One need for each code: where a code is named twice, keep apart is the stricter. */
export const strictest = (needs: readonly Need[]): readonly Need[] =>
  needs.filter((need, index) => {
    const same = needs.filter((one) => one.code === need.code)
    return needs.indexOf(same.find((one) => one.handling === 'keep-apart') ?? need) === index
  })

const worstFirst = (findings: readonly Finding[]): readonly Finding[] =>
  findings.length < 2
    ? findings
    : [...findings].sort((one, other) => RANK[one.level] - RANK[other.level])

const levelOf = (findings: readonly Finding[]): Level => findings[0]?.level ?? 'ok'

const judge = (kitchen: Kitchen, component: string, needs: readonly Need[]): JudgedComponent => {
  const facts = factsOf(kitchen)
  const caution = kitchen.station.cautions === 'block' ? 'no' : 'caution'
  const known = needs.map((need) => facts(component, need.code))
  // A component is taken from one pan: from the back-up, where that clears it for any need.
  const fromBackup = known.some((one, index) => {
    const { declared, hasBackup, touched, touchedInBackup } = one
    const isOpen = declared.state === 'free' || declared.state === 'may-contain'
    const isApart = needs[index]?.handling === 'keep-apart'
    return isApart && isOpen && hasBackup && touched !== null && touchedInBackup === null
  })
  const findings: Finding[] = []
  for (const [index, one] of known.entries()) {
    const need = needs[index]
    if (!need) continue
    const { code, handling } = need
    const found = handling === 'keep-apart' ? keptApart(one, caution, fromBackup) : leftOut(one)
    for (const { why, level, through, touches, contact } of found)
      findings.push({ component, need: code, handling, why, level, through, touches, contact })
  }
  const sorted = worstFirst(findings)
  return { level: levelOf(sorted), findings: sorted, fromBackup }
}

/**
 * What one component is to a guest, wherever in the build it goes.
 * @throws where the document is damaged; then nothing is known, and nothing may be served.
 */
export const judgeComponent = (
  kitchen: Kitchen,
  component: string,
  needs: readonly Need[],
): JudgedComponent => judge(kitchen, component, strictest(needs))

/** What a build is to a guest: the worst of the components that it takes. @throws as above. */
export const judgeTaken = (
  kitchen: Kitchen,
  taken: readonly string[],
  needs: readonly Need[],
): JudgedTaken => {
  const strict = strictest(needs)
  const judged = taken.map((component) => ({ component, ...judge(kitchen, component, strict) }))
  const findings = worstFirst(judged.flatMap((one) => one.findings))
  return {
    level: levelOf(findings),
    findings,
    fromBackup: judged.filter((one) => one.fromBackup).map((one) => one.component),
  }
}

export type Checker = typeof judgeTaken
