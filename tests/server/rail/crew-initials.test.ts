import { expect, test } from 'vitest'
import type { Recorded } from '#lib/service/events/event.ts'
import { crewInitials } from '#server/rail/crew-initials.ts'
import { plannedService } from '#tests/support/plans.ts'
import { SCHOOL_DAY } from '#tests/support/prep-stories.ts'
import { onward } from '#tests/support/service.ts'

/** The events of a service that was planned, and planned anew, each brought by a command of its own. */
const events: readonly Recorded[] = onward(plannedService(), SCHOOL_DAY).events.map(
  (event, index) => ({ ...event, command: `c-${index}` }),
)
const plans = events.filter(({ type }) => type === 'servicePlanned' || type === 'planChanged')

const asked = (kept: Readonly<Record<string, string>>) =>
  crewInitials(
    {
      events: { read: async () => events },
      guests: { of: async (_, kind) => (kind === 'initials' ? kept : {}) },
    },
    's-friday',
  )

test('[PP36] the crew of a plan is told by initials, as they were told last', async () => {
  const [first, last] = [plans[0]?.command ?? '', plans.at(-1)?.command ?? '']
  expect(last).not.toBe(first)
  const kept = { [first]: JSON.stringify(['ZZ']), [last]: JSON.stringify(['KT', 'AB']) }
  expect(await asked(kept)).toEqual({ c1: 'KT', c2: 'AB' })
})

test('[PP36] what is gone from the second file, or was never in it, is told of nobody', async () => {
  expect(await asked({})).toEqual({})
  expect(
    await crewInitials({ events: { read: async () => [] }, guests: { of: async () => ({}) } }, 's'),
  ).toEqual({})
})
