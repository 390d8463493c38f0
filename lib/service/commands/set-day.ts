import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { dayFields } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import type { DaySet } from '#lib/service/stock-event.ts'
import { nextTimeOfDay } from '#lib/time/civil.ts'

export const setDaySchema = z.strictObject({ type: z.literal('setDay'), ...dayFields })

/** Guests expected, closing time and assemblers, as they are from now on; what is left away stays. */
export const decideSetDay = (
  state: ServiceState,
  { guestsExpected, closesAt, assemblers }: z.infer<typeof setDaySchema>,
  { now }: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const closes =
      closesAt === undefined || closesAt === null
        ? closesAt
        : nextTimeOfDay(now, closesAt, running.station.timeZone)
    if (typeof closesAt === 'string' && closes === null)
      return refuse({ code: 'closes-before-now', time: closesAt })
    const set: DaySet = {
      type: 'daySet',
      ...(guestsExpected === undefined ? {} : { guestsExpected }),
      ...(closes === undefined ? {} : { closesAt: closes }),
      ...(assemblers === undefined ? {} : { assemblers }),
    }
    const isSame =
      (set.guestsExpected ?? running.expected) === running.expected &&
      (set.closesAt ?? running.closesAt) === running.closesAt &&
      (set.assemblers ?? running.assemblers) === running.assemblers
    return isSame ? refuse({ code: 'already-so' }) : happened(set)
  })
