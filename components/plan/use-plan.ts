import { useMemo, useState } from 'react'
import { useServerTime } from '#components/live/server-time.ts'
import { instantOn } from '#lib/measure/civil.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { Prepared, WayOut } from '#lib/prep/prep-plan.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import { type DoorsMissed, doorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import { type PlanForPrep, prepPlanOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'
import { firstChoices, isOnSale } from '#lib/rooms/prep/views/loads.ts'
import {
  entryOf,
  guestsOf,
  type PlanEntry,
  planCommandOf,
} from '#lib/rooms/prep/views/plan-entry.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface PlanNow {
  readonly entry: PlanEntry
  readonly setEntry: (entry: PlanEntry) => void
  readonly foods: readonly PrepChoice[]
  readonly setFood: (choice: PrepChoice) => void
  readonly dropFood: (component: string) => void
  readonly ownTable: boolean
  readonly setOwnTable: (is: boolean) => void
  readonly guests: number | null
  readonly prepared: Prepared
  readonly asPrep: ReturnType<typeof prepPlanOf>
  /** Of the plan that the crew has: what isn't on the line as the doors open. */
  readonly missed: readonly DoorsMissed[]
  /** How whoever is typed is called, by the id that they would have; null where the plan's own people count. */
  readonly typedNames: Readonly<Record<string, string>> | null
  /** What was typed isn't what was planned, or taken. */
  readonly isPlanChanged: boolean
  readonly isPrepChanged: boolean
}

/** Who is there at times that are said in full. */
const whole = ({ crew }: PlanEntry) =>
  crew.filter(({ on, from, to }) => on !== '' && from !== '' && to !== '')

/** As it would be planned; a time that isn't there yet leaves the plan's own. */
const asTyped = (entry: PlanEntry, plan: ServicePlan, station: StationDocument): PlanForPrep => {
  const { timeZone } = station
  const at = (time: string) =>
    entry.on === '' || time === '' ? null : instantOn(entry.on, time, timeZone)
  return {
    on: entry.on === '' ? plan.on : entry.on,
    opensAt: at(entry.doorsOpen) ?? plan.opensAt,
    closesAt: at(entry.doorsClose) ?? plan.closesAt,
    bells: entry.bells,
    items: entry.items,
    crew: whole(entry).map(({ adult, on, from, to }, index) => ({
      id: `c${index + 1}`,
      adult,
      on,
      from,
      to,
    })),
  }
}

/** What is being planned: typed here, worked out here, and taken once it is ready. */
export const usePlan = (
  state: RunningState,
  plan: ServicePlan,
  answer: AheadAnswer,
  told: Readonly<Record<string, string>>,
): PlanNow => {
  const { station, prep } = state
  const planned = useMemo(() => entryOf(plan, told), [plan, told])
  const [typed, setEntry] = useState<PlanEntry | null>(null)
  const entry = typed ?? planned
  // A row that was added is called otherwise than the same one that was planned.
  const asSent = (one: PlanEntry) => JSON.stringify(planCommandOf(one, station.id))
  const isPlanChanged = typed !== null && asSent(typed) !== asSent(planned)
  const [chosen, setChosen] = useState<readonly PrepChoice[] | null>(null)
  const [own, setOwn] = useState<boolean | null>(null)
  const first = useMemo(
    () => firstChoices(station, answer.wanted, answer.minutes, entry.items, answer.yields),
    [station, answer.wanted, answer.minutes, answer.yields, entry.items],
  )
  const taken = chosen ?? prep?.foods ?? first
  const foods = useMemo(
    () => taken.filter(({ component }) => isOnSale(station, component, entry.items)),
    [taken, station, entry.items],
  )
  const ownTable = own ?? prep?.ownTable ?? false
  const minute = Math.floor(useServerTime() / MINUTE_MS) * MINUTE_MS
  const asPrep = useMemo(() => {
    const asked = isPlanChanged ? asTyped(entry, plan, station) : plan
    return prepPlanOf(station, asked, { foods, ownTable, from: minute })
  }, [isPlanChanged, entry, plan, station, foods, ownTable, minute])
  const prepared = useMemo(() => tasksOf(asPrep), [asPrep])
  const missed = useMemo(() => doorsMissed(state, minute), [state, minute])
  return {
    entry,
    setEntry,
    foods,
    setFood: (choice) => {
      const isThere = foods.some(({ component }) => component === choice.component)
      setChosen(
        isThere
          ? foods.map((one) => (one.component === choice.component ? choice : one))
          : [...foods, choice],
      )
    },
    dropFood: (id) => setChosen(foods.filter(({ component }) => component !== id)),
    ownTable,
    setOwnTable: setOwn,
    guests: guestsOf(entry),
    prepared,
    asPrep,
    missed,
    typedNames: isPlanChanged
      ? Object.fromEntries(whole(entry).map(({ initials }, index) => [`c${index + 1}`, initials]))
      : null,
    isPlanChanged,
    isPrepChanged:
      prep === undefined ||
      JSON.stringify([prep.foods, prep.ownTable]) !== JSON.stringify([foods, ownTable]),
  }
}

/** A choice with a way out taken; null where the way is another person's, or a smaller menu's. */
export const withWay = (choice: PrepChoice, way: WayOut): PrepChoice | null => {
  if (way.way === 'cook-in-the-morning') {
    const { ahead: _, coolsIn: __, ...rest } = choice
    return rest
  }
  if (way.way !== 'ice') return null
  return { ...choice, coolsIn: { first: Math.min(120, way.minutes), total: way.minutes } }
}
