/** What stands on a prep sheet: the plan's tasks by class period, each with its card, its pan and its limit. */
import { civilDate } from '#lib/measure/civil.ts'
import { saysOf } from '#lib/needs/says.ts'
import { lastMinute } from '#lib/paper/labels/label-dates.ts'
import { type Cards, type Made, madeOf } from '#lib/paper/lists/made-of.ts'
import { prepFoodOf } from '#lib/prep/food-of.ts'
import { isCooled } from '#lib/prep/place-food.ts'
import type { Prepared, Task } from '#lib/prep/prep-plan.ts'
import { type GoesBack, goesBack } from '#lib/rooms/prep/facts/out-of-cold.ts'
import { type PlanForPrep, periodsOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import { isOfCrew } from '#lib/rooms/prep/facts/tasks-now.ts'
import { cookingLimit } from '#lib/safety/cooking.ts'
import { dateMark, stampOf } from '#lib/safety/date-marks.ts'
import type { HeatLimit, TemperatureLimit } from '#lib/safety/limits.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import { findComponent } from '#lib/station/find.ts'
import { asReadOn } from '#lib/station/read-again.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** What is read at the end of a task; null: nothing is. */
export type ReadFor =
  | { readonly kind: 'heat'; readonly limit: HeatLimit }
  | { readonly kind: 'held'; readonly limit: TemperatureLimit }

/** What labels say of a food, by codes of allergens. */
export interface Named {
  readonly contains: readonly string[]
  readonly mayContain: readonly string[]
  /** Of these nobody knows. */
  readonly unknown: readonly string[]
}

/** How food that was cooked is cooled: limits, and milliseconds from its start. */
export interface Cooling {
  readonly from: TemperatureLimit
  readonly firstTo: TemperatureLimit
  readonly to: TemperatureLimit
  readonly first: number
  readonly total: number
}

export interface PrepRow {
  readonly task: Task
  readonly name: string
  /** Its card; of a task that only fetches, washes or reads there is none. */
  readonly made: Made | null
  /** Numbers of the pans that it goes into, as the set-up sheet counts them. */
  readonly pans: readonly number[]
  readonly read: ReadFor | null
  /** null: it isn't cooled after. */
  readonly cooling: Cooling | null
  /** Raw meat, fish or eggs, or nobody said. */
  readonly isRaw: boolean
  readonly named: Named | null
  /** What is weighed out and waits cold; null where nothing of it does. */
  readonly back: GoesBack | null
  /** When it is thrown out at the latest, epoch milliseconds; null where nothing says, or it is dry. */
  readonly discard: number | null
}

export interface PrepSection {
  /** Civil date. */
  readonly on: string
  /** null: outside class periods. */
  readonly period: { readonly name: string; readonly from: number; readonly to: number } | null
  /** Ids of the crew who have something to do in it. */
  readonly who: readonly string[]
  readonly rows: readonly PrepRow[]
}

export interface PrepFacts {
  /** Short names along the line, by well, in the order of their numbers. */
  readonly wells: readonly (readonly {
    readonly number: number
    readonly short: readonly string[]
  }[])[]
  readonly sections: readonly PrepSection[]
}

const MAKES: readonly Task['kind'][] = ['make', 'cook']

/** The limit that its end is read for. */
const readOf = (station: StationDocument, task: Task, component: Component): ReadFor | null => {
  const limits = limitsOf(station)
  const held = (limit: TemperatureLimit): ReadFor => ({ kind: 'held', limit })
  switch (task.kind) {
    case 'cook': {
      const limit = cookingLimit(foodKindOf(component), component.food.cookedIn, limits)
      return limit === null ? null : { kind: 'heat', limit }
    }
    case 'make':
      if (component.held === 'dry') return null
      return held(component.held === 'hot' ? limits.hotHolding : limits.coldHolding)
    case 'chill':
    case 'read-cold':
      return held(limits.coolingTo)
    case 'cool':
      return held(limits.coolingFrom)
    case 'read-first':
      return held(limits.coolingFirstTo)
    case 'reheat':
      return { kind: 'heat', limit: limits.reheat }
    default:
      return null
  }
}

const coolingOf = (station: StationDocument): Cooling => {
  const limits = limitsOf(station)
  return {
    from: limits.coolingFrom,
    firstTo: limits.coolingFirstTo,
    to: limits.coolingTo,
    first: limits.coolingFirstWithin.withinMs,
    total: limits.coolingWithin.withinMs,
  }
}

const namedOf = (station: StationDocument, component: string): Named => {
  const says = saysOf(station, component)
  const which = (word: 'contains' | 'may-contain' | 'unknown') =>
    askableAllergens(station).filter((code) => (says[code] ?? 'unknown') === word)
  return {
    contains: which('contains'),
    mayContain: which('may-contain'),
    unknown: which('unknown'),
  }
}

/**
 * As the labels say it: hot food when its service ends, cold food and what is cooled ahead by its days,
 * of which the one on which it is made is the first.
 */
const discardOf = (
  station: StationDocument,
  task: Task,
  held: Component['held'],
  closesAt: number,
): PrepRow['discard'] => {
  if (held === 'dry') return null
  if (held === 'hot') return lastMinute(closesAt, station.timeZone)
  const preparedOn = civilDate(task.from, station.timeZone)
  const mark = dateMark({ preparedOn, freezings: [], useBy: null }, limitsOf(station))
  return mark.mark === 'last-day'
    ? lastMinute(stampOf(mark.lastDay, station.timeZone).endsAt, station.timeZone)
    : null
}

interface PrepSheetOf {
  readonly cards: Cards
  readonly plan: PlanForPrep
  readonly prep: Pick<PrepState, 'foods'>
  readonly prepared: Prepared
}

const rowOf = (
  { cards, plan, prep }: PrepSheetOf,
  task: Task,
  numbers: ReadonlyMap<string, readonly number[]>,
): PrepRow => {
  const { station } = cards
  const component = task.component === null ? undefined : findComponent(station, task.component)
  const choice = prep.foods.find((one) => one.component === task.component)
  if (component === undefined || choice === undefined)
    return {
      ...{ task, name: '', made: null, read: null, cooling: null },
      ...{ isRaw: false, named: null, back: null, discard: null },
      pans: task.kind === 'load' ? [...numbers.values()].flat() : [],
    }
  const makes = MAKES.includes(task.kind)
  const food = prepFoodOf(station, component, choice, [])
  const isHeated = task.kind === 'reheat'
  const isAhead = component.held === 'hot' && isCooled(food) && !isHeated
  return {
    task,
    name: component.name,
    made: makes || task.kind === 'measure' ? madeOf(cards, choice) : null,
    pans: numbers.get(component.id) ?? [],
    read: readOf(station, task, component),
    cooling: task.kind === 'cook' && isCooled(food) ? coolingOf(station) : null,
    isRaw: makes && food.raw,
    named: makes ? namedOf(asReadOn(station, plan.on), component.id) : null,
    back: goesBack(station, task),
    discard:
      makes || isHeated
        ? discardOf(station, task, isAhead ? 'cold' : component.held, plan.closesAt)
        : null,
  }
}

/** Tasks in the order of their start, raw food last of those that start together. */
export const prepFacts = (from: PrepSheetOf): PrepFacts => {
  const { cards, plan, prepared } = from
  const { station } = cards
  const numbers = new Map<string, number[]>()
  let number = 0
  const wells = station.line.wells.map(({ pans }) =>
    pans.map(({ component }) => {
      number += 1
      numbers.set(component, [...(numbers.get(component) ?? []), number])
      return { number, short: findComponent(station, component)?.short ?? [component] }
    }),
  )
  const periods = periodsOf(plan, station)
  const rows = prepared.tasks
    .filter((task) => isOfCrew(task) || task.kind === 'load')
    .map((task) => rowOf(from, task, numbers))
    .sort(
      (one, other) => one.task.from - other.task.from || Number(one.isRaw) - Number(other.isRaw),
    )
  const sections: (Omit<PrepSection, 'rows' | 'who'> & { rows: PrepRow[] })[] = []
  for (const row of rows) {
    const at = row.task.from
    const period = periods.find((one) => one.from <= at && at < one.to) ?? null
    const on = civilDate(at, station.timeZone)
    const last = sections.at(-1)
    if (last && last.on === on && last.period?.from === period?.from) last.rows.push(row)
    else sections.push({ on, period, rows: [row] })
  }
  return {
    wells,
    sections: sections.map((one) => ({
      ...one,
      who: [...new Set(one.rows.flatMap(({ task }) => task.who.map(({ who }) => who)))],
    })),
  }
}
