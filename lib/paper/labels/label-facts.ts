/** Which labels a service has, and what stands on each: pans, back-ups, batches, trays and cups. */

import type { Kitchen } from '#lib/needs/kitchen.ts'
import { type SaidOf, saidOf } from '#lib/paper/allergens/said-of.ts'
import { cupsOfLoad, goesWith, plannedOf } from '#lib/paper/labels/cups.ts'
import {
  coolingOfBatch,
  datesOf,
  earliestOf,
  type LabelCooling,
  type LabelDates,
} from '#lib/paper/labels/label-dates.ts'
import { marksOfBatches, withMarks } from '#lib/paper/labels/marks-brought.ts'
import { setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { leftOfBatch, loadsToCome } from '#lib/service/batch-loads.ts'
import { type Placed, placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, findComponent } from '#lib/station/find.ts'
import { asReadOn } from '#lib/station/read-again.ts'
import type { Component, PortionRule, StationDocument } from '#lib/station/station-document.ts'

export const LABEL_KINDS = ['pan', 'tray', 'backup', 'batch', 'cup'] as const
export type LabelKind = (typeof LABEL_KINDS)[number]

/** The line drawn small: each well's pans in order, and which of them it is. */
export interface OnLine {
  readonly wells: readonly (readonly string[])[]
  /** The pans that are black: where it goes. */
  readonly own: readonly string[]
  /** From 1, along the whole line; the first of its own. */
  readonly number: number
  readonly of: number
}

export interface LabelFacts {
  /** As `pan/pan-rice`, `batch/b2`, `planned/rice.1`, `cup/slaw`. */
  readonly id: string
  readonly kind: LabelKind
  readonly component: string
  readonly name: string
  readonly line: OnLine | null
  readonly tool: PortionRule
  /** Lidded cups on a tray; null for all else. */
  readonly cups: number | null
  /** Of a cup and a tray of them: names of the items that it goes with; empty: all, or none is known. */
  readonly goesWith: readonly string[]
  /** Of a back-up pan: lidded, with its own scoop, not reached over. */
  readonly isProtected: boolean
  /** Which load of how many, where they are told apart; null where it is no batch. */
  readonly load: { readonly nth: number | null; readonly of: number } | null
  readonly dates: LabelDates
  readonly cooling: LabelCooling | null
  readonly said: SaidOf
  /** How many of it are usual. */
  readonly copies: number
  /** It is printed unless somebody leaves it out. */
  readonly isUsual: boolean
}

/** Some cups on the side, where no pan says how many: nobody's fact, changed on the screen. */
const SOME_CUPS = 12

/** The kitchen as labels count on the day of the service. */
const kitchenFor = (state: RunningState): Kitchen => {
  const kitchen = kitchenOf(state)
  return state.plan && state.servedOn === undefined
    ? { ...kitchen, station: asReadOn(state.station, state.plan.on) }
    : kitchen
}

const onLine = (station: StationDocument): ((component: string, pan?: string) => OnLine | null) => {
  const { wells } = setUpFacts(station)
  const drawn = wells.map(({ pans }) => pans.map(({ pan }) => pan))
  const all = wells.flatMap(({ pans }) => pans)
  const holds = new Map(
    station.line.wells.flatMap(({ pans }) => pans.map(({ id, component }) => [id, component])),
  )
  return (component, pan) => {
    const own = all.filter((one) =>
      pan === undefined ? holds.get(one.pan) === component : one.pan === pan,
    )
    const [first] = own
    return first === undefined
      ? null
      : {
          wells: drawn,
          own: own.map((one) => one.pan),
          number: first.number,
          of: all.length,
        }
  }
}

type Draft = Omit<LabelFacts, 'component' | 'name' | 'tool' | 'goesWith'>

/** All labels of a service that is planned or open, in line order; `now` in epoch milliseconds. */
export const serviceLabels = (state: RunningState, now: number): readonly LabelFacts[] => {
  const { station } = state
  const kitchen = kitchenFor(state)
  const drawn = onLine(station)
  const said = new Map<string, SaidOf>()
  const saidAs = (
    id: string,
    places: readonly (Placed | null | undefined)[],
    where: 'line' | 'protected' = 'line',
  ): SaidOf => {
    const marks = marksOfBatches(state, places)
    const key = `${where} ${id} ${marks.join()}`
    const one = said.get(key) ?? saidOf(withMarks(kitchen, id, marks), id, where)
    said.set(key, one)
    return one
  }
  const of = (component: Component, draft: Draft): LabelFacts => ({
    ...draft,
    component: component.id,
    name: component.name,
    tool: component.portion,
    goesWith: draft.kind === 'cup' || draft.kind === 'tray' ? goesWith(station, component) : [],
  })
  const bare = {
    cups: null,
    isProtected: false,
    load: null,
    cooling: null,
    copies: 1,
    isUsual: true,
  }

  const waiting = (component: Component) =>
    Object.entries(state.batches)
      .filter(
        ([, batch]) =>
          batch.component === component.id &&
          batch.thrownOutAt === null &&
          batch.offSale === null &&
          leftOfBatch(batch) > 0,
      )
      .flatMap(([id]) => placeOf(state, { what: 'batch', id }) ?? [])
      .filter(({ stage }) => stage === 'waiting')
      .sort((one, other) => one.since - other.since)
  /** What is there, else the oldest that waits to go in. */
  const foodAt = (what: 'pan' | 'backup', id: string, component: Component) => {
    const place = placeOf(state, { what, id })
    return place && place.stage !== 'empty' ? place : (waiting(component)[0] ?? null)
  }

  const pans = station.line.wells.flatMap((well) =>
    well.pans.map((pan) => {
      const component = componentOf(station, pan.component)
      const isTray = component.portion.tool === 'cup'
      const id = isTray ? (`tray/${pan.id}` as const) : (`pan/${pan.id}` as const)
      const food = foodAt('pan', pan.id, component)
      return of(component, {
        ...bare,
        id,
        kind: isTray ? 'tray' : 'pan',
        line: drawn(component.id, pan.id),
        cups: isTray ? cupsOfLoad(pan.usualPortions, plannedOf(state, component.id)) : null,
        dates: datesOf(state, component, well.held, food),
        said: saidAs(component.id, [food]),
      })
    }),
  )
  const inOrder = pans.toSorted((one, other) => (one.line?.number ?? 0) - (other.line?.number ?? 0))

  const backups = station.backups.map((backup) => {
    const component = componentOf(station, backup.component)
    const held = backup.kept === 'boxed' ? 'dry' : backup.kept
    const food = foodAt('backup', backup.id, component)
    return of(component, {
      ...bare,
      id: `backup/${backup.id}`,
      kind: 'backup',
      line: drawn(component.id),
      isProtected: backup.protected,
      dates: datesOf(state, component, held, food),
      said: saidAs(component.id, [food], backup.protected ? 'protected' : 'line'),
    })
  })

  const made = Object.entries(state.batches).flatMap(([id, batch]) => {
    const component = findComponent(station, batch.component)
    const isThere = batch.thrownOutAt === null && (loadsToCome(batch) > 0 || leftOfBatch(batch) > 0)
    // What missed a reading or a limit isn't food until somebody says what becomes of it.
    if (!component || !isThere || batch.offSale !== null) return []
    const cooling = coolingOfBatch(state, component, batch, now)
    const isCold = component.held === 'cold' || batch.cooling.length > 0
    const place = placeOf(state, { what: 'batch', id }) ?? null
    return [
      of(component, {
        ...bare,
        id: `batch/${id}`,
        kind: 'batch',
        line: drawn(component.id),
        load: { nth: null, of: batch.loads },
        copies: batch.loads,
        cooling,
        dates: datesOf(state, component, isCold ? 'cold' : component.held, place),
        said: saidAs(component.id, [place]),
      }),
    ]
  })

  const planned = (state.prep?.foods ?? []).flatMap((choice) => {
    const component = findComponent(station, choice.component)
    if (!component || !needsBatch(component)) return []
    const begun = Object.values(state.batches)
      .filter((batch) => batch.component === component.id && batch.thrownOutAt === null)
      .reduce((sum, { loads }) => sum + loads, 0)
    const cooling = coolingOfBatch(state, component, null, now)
    return Array.from({ length: Math.max(0, choice.loads - begun) }, (_, at) =>
      of(component, {
        ...bare,
        id: `planned/${component.id}.${begun + at + 1}`,
        kind: 'batch',
        line: drawn(component.id),
        load: { nth: begun + at + 1, of: choice.loads },
        cooling,
        dates: datesOf(state, component, cooling === null ? component.held : 'cold', null),
        said: saidAs(component.id, []),
      }),
    )
  })

  const cups = station.components
    .filter(({ side, portion }) => side || portion.tool === 'cup')
    .map((component) => {
      const filledOf = pans.filter((one) => one.component === component.id)
      const isFilled = filledOf.some((one) => one.cups !== null)
      const planned = isFilled ? plannedOf(state, component.id) : undefined
      const usual = planned?.portions ?? filledOf.reduce((sum, one) => sum + (one.cups ?? 0), 0)
      const held = component.held
      return of(component, {
        ...bare,
        id: `cup/${component.id}`,
        kind: 'cup',
        line: null,
        dates:
          earliestOf(filledOf.map((one) => one.dates)) ??
          datesOf(state, component, held, waiting(component)[0] ?? null),
        said: saidAs(component.id, waiting(component)),
        copies: usual > 0 ? usual : SOME_CUPS,
        isUsual: usual > 0,
      })
    })

  return [...inOrder, ...backups, ...made, ...planned, ...cups]
}
