/** Whether a guest can have what is taken: component by component, need by need. */

import { isInIt } from '#lib/needs/allergen-word.ts'
import { type Facts, factsOf, type Kitchen } from '#lib/needs/kitchen.ts'
import type { Handling, Need, NeedCode } from '#lib/station/codes/codes.ts'
import type { ContactKind, Declaration } from '#lib/station/station-document.ts'

/** `caution` and `ask` are for the person in charge to accept with the guest; nobody accepts `no`. */
export type Level = 'no' | 'caution' | 'ask' | 'note' | 'ok'

/** The worse, the lower. */
export const RANK: Readonly<Record<Level, number>> = { no: 0, caution: 1, ask: 2, note: 3, ok: 4 }

export type Why =
  | 'contains'
  | 'unknown'
  | 'may-contain'
  /** No label lists it, and the law of each makes it name it: it fits, and is never called free. */
  | 'not-listed'
  /** Another component's scoop went into its pan. */
  | 'soiled'
  | 'contact'
  | 'contact-unknown'

export interface Finding {
  readonly component: string
  readonly need: NeedCode
  readonly handling: Handling
  readonly why: Why
  readonly level: Exclude<Level, 'ok'>
  /** Recipes, then the ingredient that decides it: of the component, or of what it touches. */
  readonly through: readonly string[]
  /** The component that reaches it, for `contact` and `soiled`: the worst. */
  readonly touches: string | null
  /** All that do and may have it in them, in order: an acceptance counts for these and no others. */
  readonly reached: readonly string[]
  /** What it and each of these declare: an acceptance counts for nothing worse. */
  readonly states: Readonly<Record<string, Declaration>>
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

type Found = Pick<
  Finding,
  'why' | 'level' | 'through' | 'touches' | 'reached' | 'states' | 'contact'
>

const NOTHING = { through: [], touches: null, reached: [], states: {}, contact: null } as const

const NONE: readonly Found[] = []

const reachedBy = (
  why: 'contact' | 'soiled',
  touched: Facts['touched'],
  level: Found['level'],
): readonly Found[] =>
  touched === null
    ? NONE
    : [
        {
          why,
          level,
          through: touched.declared.through,
          touches: touched.component,
          reached: touched.reached,
          states: touched.states,
          contact: touched.contact,
        },
      ]

/** Out of which pan each component came; by what stands ready now where it is left away. */
export type TakenFrom = Readonly<Record<string, 'line' | 'backup'>>

/** How a house takes what no label lists: it fits, or the person in charge accepts it with the guest. */
const notListed = (
  { state, through }: Facts['declared'],
  level: Found['level'],
): readonly Found[] =>
  state === 'not-listed' ? [{ ...NOTHING, why: state, level, through }] : NONE

interface Levels {
  readonly caution: 'caution' | 'no'
  readonly notListed: Found['level']
}

const levelsOf = ({ cautions, notListed: listed }: Kitchen['station']): Levels => {
  const caution = cautions === 'block' ? 'no' : 'caution'
  return { caution, notListed: listed === 'caution' ? caution : 'note' }
}

const keptApart = (facts: Facts, levels: Levels, backup: boolean): readonly Found[] => {
  const { caution } = levels
  const { state, through } = facts.declared
  if (state === 'contains' || state === 'unknown')
    return [{ ...NOTHING, why: state, level: 'no', through }]
  if (facts.contactUnknown) return [{ ...NOTHING, why: 'contact-unknown', level: 'no' }]
  const touched = backup ? facts.touchedInBackup : facts.touched
  const soiled = backup ? facts.soiledBackup : facts.soiled
  if (state === 'free' && touched === null && soiled === null) return NONE
  return [
    ...(state === 'may-contain'
      ? [{ ...NOTHING, why: state, level: caution, through } as const]
      : NONE),
    ...reachedBy('soiled', soiled, caution),
    ...reachedBy('contact', touched, caution),
    ...notListed(facts.declared, levels.notListed),
  ]
}

const leftOut = (facts: Facts): readonly Found[] => {
  const { state, through } = facts.declared
  if (state === 'contains') return [{ ...NOTHING, why: state, level: 'no', through }]
  if (state === 'free' && !facts.contactUnknown && !facts.touched && !facts.soiled) return NONE
  const found: Found[] = []
  if (state === 'unknown') found.push({ ...NOTHING, why: state, level: 'ask', through })
  if (state === 'may-contain') found.push({ ...NOTHING, why: state, level: 'note', through })
  if (facts.contactUnknown) found.push({ ...NOTHING, why: 'contact-unknown', level: 'note' })
  found.push(...reachedBy('soiled', facts.soiled, 'note'))
  found.push(...reachedBy('contact', facts.touched, 'note'))
  found.push(...notListed(facts.declared, 'note'))
  return found
}

/** One need for each code: where a code is named twice, keep apart is the stricter. */
export const strictest = (needs: readonly Need[]): readonly Need[] =>
  needs.filter((need, index) => {
    const same = needs.filter((one) => one.code === need.code)
    return (
      needs.indexOf(same.find((one) => one.handling === 'keep-apart') ?? same[0] ?? need) === index
    )
  })

const worstFirst = (findings: readonly Finding[]): readonly Finding[] =>
  findings.length < 2
    ? findings
    : [...findings].sort((one, other) => RANK[one.level] - RANK[other.level])

const levelOf = (findings: readonly Finding[]): Level => findings[0]?.level ?? 'ok'

/** A component is taken from one pan: from the back-up, where that clears it for any need. */
const isFromBackup = (known: readonly Facts[], needs: readonly Need[]): boolean =>
  known.some((one, index) => {
    const { declared, hasBackup, touched, touchedInBackup } = one
    const isOpen = !isInIt(declared.state) || declared.state === 'may-contain'
    const isApart = needs[index]?.handling === 'keep-apart'
    return isApart && isOpen && hasBackup && touched !== null && touchedInBackup === null
  })

const judge = (
  kitchen: Kitchen,
  component: string,
  needs: readonly Need[],
  from?: TakenFrom,
): JudgedComponent => {
  const facts = factsOf(kitchen)
  const levels = levelsOf(kitchen.station)
  const known = needs.map((need) => facts(component, need.code))
  const fromBackup = from ? from[component] === 'backup' : isFromBackup(known, needs)
  const findings: Finding[] = []
  for (const [index, one] of known.entries()) {
    const need = needs[index]
    if (!need) continue
    const { code, handling } = need
    const found = handling === 'keep-apart' ? keptApart(one, levels, fromBackup) : leftOut(one)
    for (const { why, level, through, touches, reached, states, contact } of found)
      findings.push({
        component,
        need: code,
        handling,
        why,
        level,
        through,
        touches,
        reached,
        states: { ...states, [component]: one.declared.state },
        contact,
      })
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

/**
 * What a build is to a guest: the worst of the components that it takes.
 * @param from where each came from, of what is made; as it would be taken now where left away
 * @throws as above.
 */
export const judgeTaken = (
  kitchen: Kitchen,
  taken: readonly string[],
  needs: readonly Need[],
  from?: TakenFrom,
): JudgedTaken => {
  const strict = strictest(needs)
  const judged = taken.map((component) => ({
    component,
    ...judge(kitchen, component, strict, from),
  }))
  const findings = worstFirst(judged.flatMap((one) => one.findings))
  return {
    level: levelOf(findings),
    findings,
    fromBackup: judged.filter((one) => one.fromBackup).map((one) => one.component),
  }
}

export type Checker = typeof judgeTaken
