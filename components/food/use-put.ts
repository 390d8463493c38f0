import { useState } from 'react'
import type { SaidDates } from '#components/food/said-dates.ts'
import { type ReadingForm, useReading } from '#components/job/use-reading.ts'
import { needsReading } from '#lib/rooms/food/facts/food-now.ts'
import { holdingLimit, readingOf } from '#lib/rooms/food/views/reading-entry.ts'
import { clockHours, heldUntilIn, isOnTime } from '#lib/rooms/pans/facts/clock-at-load.ts'
import { asksDates, isFromPack } from '#lib/rooms/pans/views/dates-asked.ts'
import {
  firstSource,
  fittingPortions,
  type PutSource,
  putSources,
  sourceKey,
  toldOfSource,
} from '#lib/rooms/pans/views/put-sources.ts'
import { type ScaleUnit, weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { ToldDates } from '#lib/safety/told-dates.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

export interface PutTarget {
  readonly component: string
  /** Of the pan of the line, or the back-up pan. */
  readonly id: string
  /** Portions that are offered first. */
  readonly usual: number
  /** What stays in it, in the component's unit. */
  readonly holds: number
  /** How what stays is held; null where nothing stays. */
  readonly heldBy: HeldBy | null
  /** A back-up pan is put in as it is, with all that it holds. */
  readonly isWhole: boolean
}

export interface Put {
  readonly sources: readonly PutSource[]
  readonly source: PutSource | null
  /** All of a back-up pan goes in: no amount is asked for. */
  readonly isAll: boolean
  readonly portions: number
  readonly most: number
  readonly weight: { readonly text: string; readonly unit: ScaleUnit } | null
  readonly washed: boolean
  /** Its days, as they were said; null: nothing was. */
  readonly dates: SaidDates | null
  readonly asksDates: boolean
  /** Of no batch, so that the day on which it was opened is asked where it is kept cold. */
  readonly isFromPack: boolean
  readonly form: ReadingForm
  readonly needsReading: boolean
  /** Its reading starts a clock of so many hours, in a well by time alone; null where it starts none. */
  readonly clockHours: number | null
  /** Something stands there to be put in, and may be. */
  readonly isLoadable: boolean
  /** Of a pack that is kept cold: the day on which it was opened isn't said. */
  readonly isDateLacking: boolean
  readonly isWeightLacking: boolean
  choose(source: PutSource): void
  setPortions(portions: number): void
  setWeight(weight: { readonly text: string; readonly unit: ScaleUnit } | null): void
  setWashed(washed: boolean): void
  setDates(dates: SaidDates | null): void
  /** The fields of a command that say what goes in. */
  told(): ToldDates & {
    amount?: number
    bought?: true
    weighedMg?: number
    batch?: string
    from?: string
    heldBy?: 'time'
    reading?: NonNullable<ReturnType<typeof readingOf>>
    initials?: string
    notFirst?: true
  }
}

export const usePut = (state: RunningState, target: PutTarget, now: number): Put => {
  const sources = putSources(state, target, now)
  const [key, setKey] = useState(() => {
    const first = firstSource(sources)
    return first ? sourceKey(first) : ''
  })
  const source = sources.find((one) => sourceKey(one) === key) ?? firstSource(sources)
  const each = state.portions[target.component]?.amount ?? 1
  const [wanted, setWanted] = useState(target.usual)
  const [weight, setWeight] = useState<Put['weight']>(null)
  const [washed, setWashed] = useState(false)
  const [dates, setDates] = useState<SaidDates | null>(null)
  const component = componentOf(state.station, target.component)
  const stays = heldUntilIn(state.station, target, source?.heldBy === 'time')
  const heldBy = stays ?? source?.heldBy ?? component.held
  const asksReading = needsReading(heldBy)
  const isDated = asksDates(source, heldBy)
  const fromPack = isFromPack(source, heldBy)
  const limit =
    heldBy === 'hot' || heldBy === 'cold' ? holdingLimit(state.station, component, heldBy) : null
  const form = useReading(
    state,
    target.component,
    heldBy === 'hot' ? 'hot-holding' : 'cold-holding',
    limit,
    { of: source ? sourceKey(source) : undefined },
  )

  const isAll = source?.kind === 'backup' && target.isWhole
  const there = source && 'amount' in source ? Math.floor(source.amount / each) : Infinity
  const most = Math.max(1, Math.min(there, fittingPortions(state, target, target.holds)))
  const portions = Math.min(wanted, most)
  const weighedMg = weight ? weightMg(weight.text, weight.unit) : null
  const isLoadable = source !== null && (source.kind !== 'batch' || source.problem === null)
  return {
    sources,
    source,
    isAll,
    portions,
    most,
    weight,
    washed,
    dates: isDated ? dates : null,
    asksDates: isDated,
    isFromPack: fromPack,
    form,
    needsReading: asksReading,
    clockHours:
      asksReading && isOnTime(state.station, target.id) ? clockHours(state.station) : null,
    isLoadable,
    isDateLacking: fromPack && isDated && dates === null,
    isWeightLacking: weight !== null && weighedMg === null,
    choose: (next) => {
      setKey(sourceKey(next))
      setDates(null)
    },
    setPortions: setWanted,
    setWeight,
    setWashed,
    setDates,
    told: () => {
      const reading = asksReading ? readingOf(form.entry) : null
      return {
        ...(weighedMg !== null
          ? { weighedMg }
          : isAll
            ? {}
            : {
                amount: Math.min(
                  portions * each,
                  source && 'amount' in source ? source.amount : Infinity,
                ),
              }),
        ...(source ? toldOfSource(source, fromPack) : {}),
        ...(isDated && dates ? dates.told : {}),
        ...(reading ? { reading, initials: form.entry.initials.trim() } : {}),
      }
    },
  }
}
