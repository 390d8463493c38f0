import { useState } from 'react'
import type { SaidDates } from '#components/food/said-dates.ts'
import { keepHands, keptHands, useLapse } from '#components/job/kept-hands.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import {
  holdingLimit,
  howProbed,
  judgeEntry,
  type ReadingEntry,
  readingOf,
  typedTemperature,
} from '#lib/rooms/food/views/reading-entry.ts'
import { isProbeUsed } from '#lib/rooms/food/views/round.ts'
import { sourceKey } from '#lib/rooms/pans/views/put-sources.ts'
import { type SetUpSheet, setUpSheet } from '#lib/rooms/pans/views/set-up.ts'
import { AS_USUAL, type SetUpEntry } from '#lib/rooms/pans/views/set-up-row.ts'
import type { ProbeAt } from '#lib/safety/readings.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, findPan } from '#lib/station/find.ts'

/** What was tapped and typed for one pan. */
export interface SaidOfPan extends Omit<SetUpEntry, 'reading' | 'initials' | 'dates'> {
  readonly typed: ReadingEntry | null
  /** When the newest figure of it was typed, epoch milliseconds. */
  readonly typedAt: number
  readonly dates: SaidDates | null
  /** Why its load wasn't taken; null: it wasn't sent, or something was changed since. */
  readonly refused: string | null
}

/** What was said of other food than what goes in now, told of nothing else. */
const about = (one: SaidOfPan, source: string | null): SaidOfPan =>
  one.saidOf === source
    ? one
    : {
        ...one,
        saidOf: source,
        typed: null,
        typedAt: 0,
        dates: null,
        alsoOpened: null,
        isLabelled: false,
      }

const NOTHING: SaidOfPan = { ...AS_USUAL, typed: null, typedAt: 0, dates: null, refused: null }

type Said = Readonly<Record<string, SaidOfPan>>

/** What is typed here takes minutes: it stays while the lead looks after something else. */
let kept: { readonly service: string; readonly said: Said } | null = null

export interface SetUp {
  readonly sheet: SetUpSheet
  of(pan: string): SaidOfPan
  form(pan: string): ReadingForm
  /** Its probe was in food, also of a pan of this sheet that isn't sent yet. */
  isProbeUsed(pan: string): boolean
  say(pan: string, part: Partial<Omit<SaidOfPan, 'typed' | 'typedAt'>>): void
  /** What was loaded is forgotten, what wasn't taken says why. */
  sent(answers: Readonly<Record<string, string | null>>): void
  /** Probe, place and initials, for the pans after this one. */
  remember(pan: string): void
}

export const useSetUp = (state: RunningState, now: number): SetUp => {
  const { station, service } = state
  const { scale } = station.safety
  const [said, setSaid] = useState<Said>(() => (kept?.service === service ? kept.said : {}))
  const [hands, setHands] = useState(keptHands)
  useLapse((gone) =>
    setHands((before) => (before.initials === gone ? { ...before, initials: '' } : before)),
  )
  const change = (how: (before: Said) => Said) =>
    setSaid((before) => {
      const next = how(before)
      kept = { service, said: next }
      return next
    })
  const inPan = (pan: string) => componentOf(station, findPan(station, pan)?.component ?? '')
  const placeIn = (pan: string): ProbeAt =>
    howProbed(inPan(pan)) === 'piece' ? 'thickest-part' : 'middle-stirred'
  const entryIn = (pan: string, { typed }: Pick<SaidOfPan, 'typed'>): ReadingEntry => {
    if (typed && typed.text !== '') return typed
    return {
      text: '',
      scale: typed?.scale ?? scale,
      probe: hands.probe,
      where: hands.isMiddle ? placeIn(pan) : null,
      initials: hands.initials,
      held: '',
      confirmed: false,
    }
  }
  const heldIn = (pan: string): 'hot' | 'cold' => (inPan(pan).held === 'hot' ? 'hot' : 'cold')
  const judgedIn = (pan: string, one: SaidOfPan) => {
    const heldBy = heldIn(pan)
    const context = heldBy === 'hot' ? ('hot-holding' as const) : ('cold-holding' as const)
    const limit = holdingLimit(station, inPan(pan), heldBy)
    const entry = entryIn(pan, one)
    return { entry, context, limit, judged: judgeEntry(entry, context, scale, limit) }
  }
  const sheet = setUpSheet(
    state,
    (pan) => {
      const one = said[pan] ?? NOTHING
      const { typedAt, dates, ...rest } = one
      const { entry, judged } = judgedIn(pan, one)
      const reading = judged.isReady ? readingOf(entry) : null
      return {
        ...rest,
        dates: dates?.told ?? null,
        reading: reading && { ...reading, at: typedAt },
        initials: entry.initials.trim(),
      }
    },
    now,
  )
  const sourceIn = (pan: string): string | null => {
    const source = sheet.rows.find((row) => row.pan === pan)?.source
    return source ? sourceKey(source) : null
  }
  const of = (pan: string): SaidOfPan => about(said[pan] ?? NOTHING, sourceIn(pan))
  const remember = (pan: string) => {
    const { probe, initials, where } = entryIn(pan, of(pan))
    keepHands({ probe, initials, isMiddle: where !== null && where !== 'surface' })
  }
  return {
    sheet,
    of,
    isProbeUsed: (pan) => {
      const others = Object.entries(said).filter(([one]) => one !== pan)
      const unsent = others.flatMap(([, { typed }]) => (typed?.text ? [typed.probe] : []))
      return isProbeUsed(state, entryIn(pan, of(pan)).probe, unsent)
    },
    form: (pan) => {
      const { entry, context, limit, judged } = judgedIn(pan, of(pan))
      return {
        entry,
        judged,
        typed: typedTemperature(entry),
        context,
        limit,
        places: [placeIn(pan), 'surface'],
        house: scale,
        change: (part) => {
          const isFigure = 'text' in part || 'scale' in part
          const typed = { ...entry, ...(isFigure ? { confirmed: false } : {}), ...part }
          change((before) => ({
            ...before,
            [pan]: {
              ...about(before[pan] ?? NOTHING, sourceIn(pan)),
              typed,
              ...(isFigure ? { typedAt: now } : {}),
              refused: null,
            },
          }))
          setHands({
            probe: typed.probe,
            initials: typed.initials,
            isMiddle: typed.where !== null && typed.where !== 'surface',
          })
        },
        remember: () => remember(pan),
      }
    },
    say: (pan, part) =>
      change((before) => ({
        ...before,
        [pan]: { ...about(before[pan] ?? NOTHING, sourceIn(pan)), refused: null, ...part },
      })),
    sent: (answers) =>
      change((before) =>
        Object.fromEntries(
          Object.entries(before).flatMap(([pan, one]) => {
            const why = answers[pan]
            return why === null ? [] : [[pan, why === undefined ? one : { ...one, refused: why }]]
          }),
        ),
      ),
    remember,
  }
}
