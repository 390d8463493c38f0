/**
 * A second opinion on what is taken from known pans: what of it doesn't suit its guest, and what of that
 * the person in charge accepted. Of the engine it imports nothing.
 */
import type { StationDocument } from '#lib/station/station-document.ts'
import {
  type AskedFor,
  ingredientsOf,
  type Place,
  reachedFrom,
  wordOfIngredient,
} from '#tests/lib/needs/oracle/oracle.ts'

/** A place with what went into the pans behind its line. */
export interface WholePlace extends Place {
  readonly soiledBehind: Place['soiled']
}

export const WORST_FIRST = ['contains', 'unknown', 'may-contain', 'not-listed', 'free'] as const
export type Word = (typeof WORST_FIRST)[number]

export type From = 'line' | 'backup'

/** Something that doesn't suit: `no` nobody accepts, the others the person in charge may. */
export interface Unsuited {
  readonly component: string
  readonly need: string
  readonly why:
    | 'contains'
    | 'unknown'
    | 'may-contain'
    | 'not-listed'
    | 'soiled'
    | 'contact'
    | 'contact-unknown'
  readonly level: 'no' | 'caution' | 'ask'
  /** What brings it into the pan, by id in order. */
  readonly reached: readonly string[]
  /** Those of them that are the worst. */
  readonly worst: readonly string[]
  /** What it declares itself, and those of them that are in it as they are. */
  readonly words: Readonly<Record<string, Word>>
}

const worstOf = (words: readonly Word[]): Word =>
  WORST_FIRST.find((one) => words.includes(one)) ?? 'free'

const wordsIn = new WeakMap<StationDocument, Map<string, Word>>()

const wordOf = (station: StationDocument, component: string, code: string): Word => {
  const known = wordsIn.get(station) ?? new Map<string, Word>()
  wordsIn.set(station, known)
  const key = `${component} ${code}`
  const found = known.get(key)
  if (found !== undefined) return found
  const made = station.components.find((one) => one.id === component)
  if (!made) throw new Error(`no component ${component}`)
  const words = ingredientsOf(station, made).map((one) => wordOfIngredient(station, one, code))
  const word = worstOf(words)
  known.set(key, word)
  return word
}

export interface TakenOracle {
  /** Where a component is taken from now: out of its own pan behind the line, where that clears it. */
  readonly from: (component: string, needs: readonly AskedFor[]) => From
  readonly unsuited: (
    component: string,
    needs: readonly AskedFor[],
    from: From,
  ) => readonly Unsuited[]
}

/** Where a code is named twice, keep apart is the stricter. */
const strict = (needs: readonly AskedFor[]): readonly AskedFor[] =>
  [...new Set(needs.map(({ code }) => code))].map((code) => ({
    code,
    handling: needs.some((one) => one.code === code && one.handling === 'keep-apart')
      ? 'keep-apart'
      : 'leave-out',
  }))

export const createTaken = (place: WholePlace): TakenOracle => {
  const { station } = place
  const whenNamed = station.cautions === 'block' ? 'no' : 'caution'
  const reaches = new Map<string, readonly string[]>()
  const reach = (component: string, from: From): readonly string[] => {
    const key = `${component} ${from}`
    const known = reaches.get(key)
    if (known) return known
    const found = [...reachedFrom(place, component, from === 'backup')].sort()
    reaches.set(key, found)
    return found
  }
  /** Nothing of it gets into others: no label declares it in it, nor leaves that open. */
  const isFree = (component: string, code: string) =>
    ['free', 'not-listed'].includes(wordOf(station, component, code))
  const touching = (component: string, from: From, code: string): readonly string[] =>
    reach(component, from).filter((one) => !isFree(one, code))
  const scoops = (component: string, from: From, code: string): readonly string[] => [
    ...new Set(
      (from === 'line' ? place.soiled : place.soiledBehind)
        .filter((one) => one.component === component)
        .map(({ by }) => by)
        .filter((by) => !isFree(by, code) || touching(by, 'line', code).length > 0)
        .sort(),
    ),
  ]
  const worstAmong = (all: readonly string[], code: string): readonly string[] => {
    const word = worstOf(all.map((one) => wordOf(station, one, code)))
    return all.filter((one) => wordOf(station, one, code) === word)
  }
  const ofNeed = (component: string, need: AskedFor, from: From): readonly Unsuited[] => {
    const { code } = need
    const word = wordOf(station, component, code)
    const one = (
      why: Unsuited['why'],
      level: Unsuited['level'],
      reached: readonly string[] = [],
    ): Unsuited => ({
      component,
      need: code,
      why,
      level,
      reached,
      worst: worstAmong(reached, code),
      words: Object.fromEntries(
        [component, ...(why === 'contact' ? reached : [])].map((id) => [
          id,
          wordOf(station, id, code),
        ]),
      ),
    })
    if (word === 'contains') return [one('contains', 'no')]
    if (need.handling === 'leave-out') return word === 'unknown' ? [one('unknown', 'ask')] : []
    if (word === 'unknown') return [one('unknown', 'no')]
    if (station.contacts === null) return [one('contact-unknown', 'no')]
    const touched = touching(component, from, code)
    const soiled = scoops(component, from, code)
    return [
      ...(word === 'may-contain' ? [one('may-contain', whenNamed)] : []),
      ...(soiled.length > 0 ? [one('soiled', whenNamed, soiled)] : []),
      ...(touched.length > 0 ? [one('contact', whenNamed, touched)] : []),
      ...(word === 'not-listed' && station.notListed === 'caution'
        ? [one('not-listed', whenNamed)]
        : []),
    ]
  }
  return {
    from: (component, needs) => {
      const isBehind = station.backups.some((one) => one.component === component && one.protected)
      const clears = strict(needs).some(
        ({ code, handling }) =>
          handling === 'keep-apart' &&
          ['free', 'not-listed', 'may-contain'].includes(wordOf(station, component, code)) &&
          touching(component, 'line', code).length > 0 &&
          touching(component, 'backup', code).length === 0,
      )
      return isBehind && clears && place.ready.includes(component) ? 'backup' : 'line'
    },
    unsuited: (component, needs, from) =>
      strict(needs).flatMap((need) => ofNeed(component, need, from)),
  }
}
