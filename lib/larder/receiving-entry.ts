/** A delivered food while it is typed: what is lacking, what it comes to, and what is sent. */

import { asksCold, lastReceived } from '#lib/larder/deliveries.ts'
import {
  MOST_LOT,
  MOST_PACKS,
  type SaidDelivery,
  type SameProduct,
  type SentBack,
} from '#lib/larder/delivery.ts'
import type { FoodToReceive, ReceivingShown } from '#lib/larder/receiving-view.ts'
import { numberOf, tenthsOf } from '#lib/measure/number-pad.ts'
import { typedDay } from '#lib/measure/typed-day.ts'
import type { TimeLimit } from '#lib/safety/limits.ts'
import type { ReadingQuestion } from '#lib/safety/readings.ts'
import {
  type Arrival,
  arrivalLack,
  coolsWithin,
  questionArrival,
  readAtArrival,
  type TurnedAway,
  turnedAway,
} from '#lib/safety/receiving.ts'
import { isTemperature, type Temperature } from '#lib/safety/temperature.ts'

export interface ReceivingEntry {
  readonly same: SameProduct | null
  readonly comes: Arrival | null
  readonly degrees: string
  /** It was asked whether that figure is right, and it is. */
  readonly isSure: boolean
  readonly solid: boolean | null
  /** Figures as they are typed. */
  readonly date: string
  readonly hasNoDate: boolean
  readonly lot: string
  readonly hasNoLot: boolean
  readonly packs: string
  /** It comes dry, and its label was looked at: it asks for no cold. */
  readonly needsNoCold: boolean
}

/** What never came and has no label that was read is compared with nothing. */
export const beginEntry = (comes: Arrival | null, isCompared: boolean = true): ReceivingEntry => ({
  same: isCompared ? null : 'not-sure',
  comes,
  degrees: '',
  isSure: false,
  solid: null,
  date: '',
  hasNoDate: false,
  lot: '',
  hasNoLot: false,
  packs: '',
  needsNoCold: false,
})

export type EntryLack =
  | 'same'
  | 'comes'
  | 'cold'
  | 'temperature'
  | 'sure'
  | 'solid'
  | 'date'
  | 'year'
  | 'no-date'
  | 'lot'
  | 'lot-too-long'
  | 'packs'
  | 'probe'
  | 'initials'

export interface JudgedReceiving {
  /** What is said so far; null while nobody said how it comes. */
  readonly said: SaidDelivery | null
  /** What is lacking before it can be received; null where nothing is. */
  readonly lacks: EntryLack | null
  /** As it stands it goes back. */
  readonly against: TurnedAway | null
  readonly question: ReadingQuestion | null
  readonly read: Temperature | null
  readonly useBy: string | null
  /** It is asked whether its label wants it cold. */
  readonly asksCold: boolean
  /** Received, it still has to be cooled. */
  readonly cools: TimeLimit | null
}

export interface Hands {
  readonly probe: string
  readonly initials: string
}

/** What it is held against, and how a date is written there. */
export type ReceivingHere = Pick<ReceivingShown, 'today' | 'limits' | 'scale' | 'dayOrder'> &
  Pick<FoodToReceive, 'cold' | 'deliveries'>

const readOf = (entry: ReceivingEntry, here: ReceivingHere): Temperature | null => {
  const tenths = tenthsOf(entry.degrees)
  const read = tenths === null ? null : { tenths, scale: here.scale }
  return read !== null && isTemperature(read) ? read : null
}

const dateLack = (entry: ReceivingEntry, is: ReturnType<typeof typedDay>['is']) => {
  if (entry.hasNoDate || is === 'day') return null
  if (is === 'no-date') return 'no-date'
  return is === 'needs-year' ? 'year' : 'date'
}

const packsOf = (entry: ReceivingEntry): number | undefined | null => {
  if (entry.packs === '') return undefined
  const packs = numberOf(entry.packs)
  return packs !== null && Number.isInteger(packs) && packs >= 1 && packs <= MOST_PACKS
    ? packs
    : null
}

const lotLack = ({ lot, hasNoLot, comes }: ReceivingEntry): EntryLack | null => {
  const typed = lot.trim()
  if (typed.length > MOST_LOT) return 'lot-too-long'
  return typed === '' && (!hasNoLot || comes === 'shellfish') ? 'lot' : null
}

/** A delivered food as it is typed, judged as the server will judge it. */
export const judgeEntry = (
  ingredient: string,
  entry: ReceivingEntry,
  here: ReceivingHere,
  hands: Hands,
): JudgedReceiving => {
  const { comes, same } = entry
  const typed = typedDay(entry.date, here.today, here.dayOrder)
  const useBy = !entry.hasNoDate && typed.is === 'day' ? typed.date : null
  const isRead = comes !== null && ['food', 'air'].includes(readAtArrival(comes))
  const read = isRead ? readOf(entry, here) : null
  const solid = comes === 'frozen' ? entry.solid : null
  const arrived = comes === null ? null : { comes, read, solid, useBy }
  const asked = comes !== null && read ? questionArrival(comes, read, here.scale) : null
  const question = asked?.code === 'did-you-mean' && !asked.must && entry.isSure ? null : asked
  const lack = arrived && arrivalLack(arrived)
  const asksNow =
    comes !== null &&
    asksCold({ comes, same }, here.cold, lastReceived([...here.deliveries].reverse()))
  const packs = packsOf(entry)
  const lacks: readonly (EntryLack | null)[] = [
    same === null ? 'same' : null,
    comes === null ? 'comes' : null,
    asksNow && !entry.needsNoCold ? 'cold' : null,
    lack,
    question ? 'sure' : null,
    dateLack(entry, typed.is),
    lotLack(entry),
    packs === null ? 'packs' : null,
    read && hands.probe.trim() === '' ? 'probe' : null,
    hands.initials.trim() === '' ? 'initials' : null,
  ]
  const said: SaidDelivery | null =
    comes === null
      ? null
      : {
          ingredient,
          ...(same === null ? {} : { same }),
          comes,
          ...(read === null
            ? {}
            : {
                reading: {
                  ...read,
                  probe: hands.probe.trim() || null,
                  ...(entry.isSure ? { scaleConfirmed: true } : {}),
                },
              }),
          ...(solid === null ? {} : { solid }),
          useBy,
          lot: entry.hasNoLot ? null : entry.lot.trim() || null,
          ...(packs ? { packs } : {}),
          ...(comes === 'dry' && entry.needsNoCold ? { needsNoCold: true as const } : {}),
        }
  return {
    said,
    lacks: lacks.find((one) => one !== null) ?? null,
    against: arrived === null || question ? null : turnedAway(arrived, here.today, here.limits),
    question,
    read,
    useBy,
    asksCold: asksNow,
    cools: arrived === null || question ? null : coolsWithin(arrived, here.limits),
  }
}

/** What turns it away, as the reason that it goes back for. */
export const sentBackFor = ({ code }: TurnedAway): SentBack => code
