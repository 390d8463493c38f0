import { expect, it } from 'vitest'
import { read, whenAt } from '#tests/support/food.ts'
import { codeOf, ready, running } from '#tests/support/service.ts'

const OUT = read(120)

it('[F90] food that is read out of its limits as it comes out of a back-up pan takes that pan off sale', () => {
  const told = ready()
  for (const type of ['topUp', 'changePan'] as const) {
    const decision = whenAt(told, 20, {
      type,
      pan: 'pan-chicken',
      ...(type === 'topUp' ? { amount: 85_000 } : {}),
      from: 'back-up-chicken',
      ...OUT,
    })
    expect(codeOf(decision)).toBe('cannot-load')
    expect(decision).toMatchObject({
      also: [
        { type: 'temperatureRead', what: 'backup', id: 'back-up-chicken', inLimits: false },
        { type: 'takenOffSale', what: 'backup', id: 'back-up-chicken', why: 'out-of-limits' },
      ],
    })
  }
  expect(running(told).backupPans['back-up-chicken']?.offSale).toBe(null)
})

it('[F90] in its limits it goes in, and nothing else is recorded of the back-up pan', () => {
  const decision = whenAt(ready(), 20, {
    type: 'changePan',
    pan: 'pan-chicken',
    from: 'back-up-chicken',
    ...read(150),
  })
  expect(decision).toMatchObject({ events: [{ type: 'panChanged', from: 'back-up-chicken' }] })
})

it('[F90] out of a batch it is the batch’s, which then waits for a decision', () => {
  const decision = whenAt(ready(), 20, {
    type: 'changePan',
    pan: 'pan-chicken',
    amount: 850_000,
    batch: 'opening-chicken',
    ...OUT,
  })
  expect(codeOf(decision)).toBe('cannot-load')
  expect(decision).toMatchObject({
    also: [
      { type: 'temperatureRead', what: 'batch', id: 'opening-chicken', inLimits: false },
      { type: 'takenOffSale', what: 'batch', id: 'opening-chicken' },
    ],
  })
})
