import { useState } from 'react'
import { keepHands, keptHands, useLapse } from '#components/job/kept-hands.ts'
import {
  type EntryLimit,
  type JudgedEntry,
  judgeEntry,
  probePlaces,
  type ReadingEntry,
  typedTemperature,
} from '#lib/rooms/food/views/reading-entry.ts'
import type { ProbeAt, ReadingContext } from '#lib/safety/readings.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export interface ReadingForm {
  readonly entry: ReadingEntry
  readonly judged: JudgedEntry
  /** What is typed so far, to be recorded; null while it is no number. */
  readonly typed: Temperature | null
  readonly context: ReadingContext
  readonly limit: EntryLimit | null
  /** Where it can be read. */
  readonly places: readonly ProbeAt[]
  /** The scale on which this house reads. */
  readonly house: Scale
  change(part: Partial<ReadingEntry>): void
  /** Once it was sent: probe, place and initials are kept for the next, what was read never is. */
  remember(): void
}

/** Initials that sign a decision are typed anew each time. */
interface ReadingOptions {
  readonly isSignature?: boolean
  /** Where it can be read, where its food alone doesn't tell. */
  readonly places?: readonly ProbeAt[]
  /** What is read: a figure that was typed of other food is forgotten. */
  readonly of?: string | undefined
}

const beginning = (
  scale: Scale,
  places: readonly ProbeAt[],
  { isSignature = false }: ReadingOptions,
): ReadingEntry => {
  const { initials, probe, isMiddle } = keptHands()
  return {
    text: '',
    scale,
    probe,
    where: isMiddle ? (places[0] ?? null) : null,
    initials: isSignature ? '' : initials,
    held: '',
    confirmed: false,
  }
}

/** A reading as it is typed, judged as it stands: the temperature is never there beforehand. */
export const useReading = (
  state: RunningState,
  component: string,
  context: ReadingContext,
  limit: EntryLimit | null,
  options: ReadingOptions = {},
): ReadingForm => {
  const { scale } = state.station.safety
  const places = options.places ?? probePlaces(findComponent(state.station, component), context)
  const [entry, setEntry] = useState<ReadingEntry>(() => beginning(scale, places, options))
  const [of, setOf] = useState(options.of)
  if (of !== options.of) {
    setOf(options.of)
    setEntry(beginning(scale, places, options))
  }
  useLapse((gone) =>
    setEntry((before) =>
      before.initials === gone && before.text === '' ? { ...before, initials: '' } : before,
    ),
  )
  return {
    entry,
    typed: typedTemperature(entry),
    judged: judgeEntry(entry, context, scale, limit),
    context,
    limit,
    places,
    house: scale,
    change: (part) =>
      setEntry((before) => ({
        ...before,
        ...('text' in part || 'scale' in part ? { confirmed: false } : {}),
        ...part,
      })),
    remember: () => {
      const { probe, initials, where } = entry
      keepHands({
        probe,
        isMiddle: where !== null && where !== 'surface',
        ...(options.isSignature ? {} : { initials }),
      })
      setEntry(beginning(scale, places, options))
    },
  }
}
