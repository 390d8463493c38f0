import { expect, it } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { stationSchema } from '#lib/station/schema.ts'

/** Codes of what is wrong with the demo station where all its wells and all its food are of one kind. */
const codesOf = (held: 'hot' | 'cold' | 'dry' | 'time', is: 'hot' | 'cold' | 'dry') => {
  const document = stationSchema.parse(alderHall)
  for (const well of document.line.wells) well.held = held
  for (const one of document.components) {
    one.held = is
    one.food.kind = 'ready'
  }
  const read = stationSchema.safeParse(document)
  return (read.error?.issues ?? []).map((one) =>
    'params' in one ? Reflect.get(Object(one.params), 'code') : one.message,
  )
}

const STANDS = {
  hot: ['hot', 'time'],
  cold: ['cold', 'time'],
  dry: ['hot', 'cold', 'dry'],
} as const

it.each(['hot', 'cold', 'dry', 'time'] as const)(
  '[M49] food stands in a well that is %s only where that holds it as it needs',
  (held) => {
    for (const is of ['hot', 'cold', 'dry'] as const) {
      const stands = STANDS[is].some((one) => one === held)
      const codes = codesOf(held, is).filter((one) => one === 'held-otherwise')
      expect([is, codes.length]).toEqual([is, stands ? 0 : 10])
    }
  },
)
