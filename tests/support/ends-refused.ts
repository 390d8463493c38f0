/** Commands that are refused as a service ends, by their code. */
import { read } from '#tests/support/food.ts'
import { type Given, given, OPENED_AT, type Told } from '#tests/support/service.ts'

const ends = { type: 'endFood', what: 'pan', how: 'eye', initials: 'KT' } as const

/** As of a service that somebody planned: what its plan says is no matter here. */
export const asPlanned = (told: Told): Told => ({
  ...told,
  state: { ...told.state, plan: {} } as Told['state'],
})

export const endsRefused = {
  'end-not-offered': [given(), { ...ends, id: 'pan-rice', end: 'cold' }],
  'end-asks-reading': [given(), { ...ends, id: 'pan-rice', end: 'cool' }],
  'food-unanswered': [asPlanned(given()), { type: 'close' }],
  'still-cooling': [
    given({
      type: 'recordCooling',
      batch: 'opening-rice',
      ...read(150),
      presentUntil: OPENED_AT + 8 * 3_600_000,
    }),
    { type: 'close' },
  ],
} as const satisfies Readonly<Record<string, readonly [Told, Given]>>
