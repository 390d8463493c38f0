/** Who can taste what, by the judge that guests are judged by, and who tastes it instead. */
import { type Finding, isFine, judgeComponent } from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import { asReadOn } from '#lib/station/read-again.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { Taster, TasterTold, Tasting, ToldByTaster } from '#lib/tasting/tasting.ts'

export type Verdict =
  | { readonly is: 'not-asked' | 'not-sure' }
  /** With what is said of it all the same. */
  | { readonly is: 'can'; readonly findings: readonly Finding[] }
  /** The worst first. Nobody accepts a caution at a tasting: another tastes. */
  | { readonly is: 'cannot'; readonly findings: readonly Finding[] }

export interface TasterOf {
  readonly taster: number
  readonly verdict: Verdict
  /** Who tastes it for them; null where they can, and where nobody else can. */
  readonly instead: number | null
}

export interface ComponentTasted {
  readonly component: string
  readonly tasters: readonly TasterOf[]
  /** Numbers of those who can. */
  readonly can: readonly number[]
}

const kitchens = new WeakMap<StationDocument, Kitchen>()

/**
 * A batch is made with the tools of the station, so all that touches the component on the line
 * counts; a back-up pan is no batch, and clears nothing here.
 */
const kitchenOf = (station: StationDocument): Kitchen => {
  const known = kitchens.get(station) ?? { station, soiled: [], lent: [], ready: [] }
  kitchens.set(station, known)
  return known
}

const verdictOf = (kitchen: Kitchen, component: string, told: TasterTold | undefined): Verdict => {
  if (!told) return { is: 'not-asked' }
  if (told.asked === 'not-sure') return { is: 'not-sure' }
  const needs = told.asked === 'none' ? [] : told.needs.map((need) => ({ ...need, reason: null }))
  const { level, findings } = judgeComponent(kitchen, component, needs)
  return { is: isFine(level) ? 'can' : 'cannot', findings }
}

/** @throws where the document is damaged; then nothing is known, and nothing is tasted. */
export const whoCanTaste = (
  station: StationDocument,
  {
    on,
    components,
    tasters,
  }: Pick<Tasting, 'on' | 'components'> & {
    readonly tasters: readonly Pick<Taster, 'number'>[]
  },
  told: ToldByTaster,
): readonly ComponentTasted[] => {
  const kitchen = kitchenOf(asReadOn(station, on))
  return components.map((component) => {
    const judged = tasters.map(({ number }) => ({
      taster: number,
      verdict: verdictOf(kitchen, component, told[number]),
    }))
    const can = judged.filter(({ verdict }) => verdict.is === 'can').map(({ taster }) => taster)
    return {
      component,
      can,
      tasters: judged.map((one) => ({
        ...one,
        instead: one.verdict.is === 'can' ? null : (can[0] ?? null),
      })),
    }
  })
}
