import { useState } from 'react'
import { keep, readKept } from '#components/device/device-shelf.ts'
import {
  type EntryLimit,
  type JudgedEntry,
  judgeEntry,
  probePlaces,
  type ReadingEntry,
  typedTemperature,
} from '#lib/rooms/food/views/reading-entry.ts'
import type { ProbeAt, ReadingContext } from '#lib/safety/readings.ts'
import type { Temperature } from '#lib/safety/temperature.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

const INITIALS_KEY = 'initials'
const PROBE_KEY = 'probe'
const FIRST_PROBE = '1'

const NOTHING_TYPED = {
  text: '',
  probe: '',
  where: null,
  initials: '',
  held: '',
  confirmed: false,
} as const

export interface ReadingForm {
  readonly entry: ReadingEntry
  readonly judged: JudgedEntry
  /** What is typed so far, to be recorded; null while it is no number. */
  readonly typed: Temperature | null
  readonly context: ReadingContext
  readonly limit: EntryLimit | null
  /** Where it can be read. */
  readonly places: readonly ProbeAt[]
  /** What was typed last on this device: a tap away, never filled in by itself. */
  readonly offers: { readonly probe: string; readonly initials: string }
  change(part: Partial<ReadingEntry>): void
  /** Once it was sent: the next reading is a new one, and is offered this probe and these initials. */
  remember(): void
}

/** A reading as it is typed, judged as it stands: nothing of it is answered beforehand. */
export const useReading = (
  state: RunningState,
  component: string,
  context: ReadingContext,
  limit: EntryLimit | null,
): ReadingForm => {
  const { scale } = state.station.safety
  const [offers, setOffers] = useState(() => ({
    probe: readKept(PROBE_KEY) ?? FIRST_PROBE,
    initials: readKept(INITIALS_KEY) ?? '',
  }))
  const [entry, setEntry] = useState<ReadingEntry>(() => ({
    ...NOTHING_TYPED,
    scale,
  }))
  return {
    entry,
    judged: judgeEntry(entry, context, scale, limit),
    typed: typedTemperature(entry),
    context,
    limit,
    places: probePlaces(findComponent(state.station, component)),
    offers,
    change: (part) =>
      setEntry((before) => ({
        ...before,
        ...('text' in part || 'scale' in part ? { confirmed: false } : {}),
        ...part,
      })),
    remember: () => {
      const [probe, initials] = [entry.probe.trim(), entry.initials.trim()]
      keep(INITIALS_KEY, initials || null)
      keep(PROBE_KEY, probe || null)
      setOffers({ probe: probe || FIRST_PROBE, initials })
      setEntry((before) => ({ ...before, ...NOTHING_TYPED }))
    },
  }
}
