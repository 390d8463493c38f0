import { useState } from 'react'
import { keep, readKept } from '#components/device/device-shelf.ts'
import type { ReadingContext } from '#lib/safety/readings.ts'
import type { RunningState } from '#lib/service/state.ts'
import {
  type EntryLimit,
  type JudgedEntry,
  judgeEntry,
  type ReadingEntry,
} from '#lib/views/reading-entry.ts'

const INITIALS_KEY = 'initials'
const PROBE_KEY = 'probe'
const FIRST_PROBE = '1'

/** Initials that this device remembers. */
export const keptInitials = (): string => readKept(INITIALS_KEY) ?? ''
export const keepInitials = (initials: string): void => keep(INITIALS_KEY, initials.trim() || null)

export interface ReadingForm {
  readonly entry: ReadingEntry
  readonly judged: JudgedEntry
  readonly context: ReadingContext
  readonly limit: EntryLimit | null
  change(part: Partial<ReadingEntry>): void
  /** Once it was sent: probe and initials stay for the next one. */
  remember(): void
}

/** A reading as it is typed, judged as it stands. Probe and initials are the last ones of the device. */
export const useReading = (
  state: RunningState,
  context: ReadingContext,
  limit: EntryLimit | null,
): ReadingForm => {
  const { scale } = state.station.safety
  const [entry, setEntry] = useState<ReadingEntry>(() => ({
    text: '',
    scale,
    probe: readKept(PROBE_KEY) ?? FIRST_PROBE,
    where: 'middle-stirred',
    initials: keptInitials(),
    held: '',
    confirmed: false,
  }))
  return {
    entry,
    judged: judgeEntry(entry, context, scale, limit),
    context,
    limit,
    change: (part) =>
      setEntry((before) => ({
        ...before,
        ...('text' in part || 'scale' in part ? { confirmed: false } : {}),
        ...part,
      })),
    remember: () => {
      keepInitials(entry.initials)
      keep(PROBE_KEY, entry.probe.trim() || null)
      // What was written down isn't typed on: the next reading is a new one.
      setEntry((before) => ({ ...before, text: '', held: '', confirmed: false }))
    },
  }
}
