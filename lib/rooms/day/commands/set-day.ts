import { nextTimeOfDay } from '#lib/measure/civil.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { dayFields } from '#lib/service/commands/fields.ts'
import type { DaySet } from '#lib/service/events/stock-event.ts'

/** Guests expected, closing time and assemblers, as they are from now on; what is left away stays. */
export const setDay = defineCommand({
  type: 'setDay',
  who: [],
  stages: ['open'],
  schema: dayFields,
  decide: (state, { guestsExpected, closesAt, assemblers }, { now }) => {
    const closes =
      closesAt === undefined || closesAt === null
        ? closesAt
        : nextTimeOfDay(now, closesAt, state.station.timeZone)
    if (typeof closesAt === 'string' && closes === null)
      return refuse({ code: 'closes-before-now', time: closesAt })
    const set: DaySet = {
      type: 'daySet',
      ...(guestsExpected === undefined ? {} : { guestsExpected }),
      ...(closes === undefined ? {} : { closesAt: closes }),
      ...(assemblers === undefined ? {} : { assemblers }),
    }
    const isSame =
      (set.guestsExpected ?? state.expected) === state.expected &&
      (set.closesAt ?? state.closesAt) === state.closesAt &&
      (set.assemblers ?? state.assemblers) === state.assemblers
    return isSame ? refuse({ code: 'already-so' }) : happened(set)
  },
  sample: ({ assemblers }) => [{ assemblers: assemblers === 1 ? 2 : 1 }],
  rules: ['U16'],
  example: { guestsExpected: 120, closesAt: '13:15', assemblers: 2 },
  tells: ': the plan of the day; what is left away stays',
})
