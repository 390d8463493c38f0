import { expect, test } from 'vitest'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'

const here = {
  now: Date.parse('2026-11-25T18:00:00Z'),
  making: () => null,
  name: () => 'Herb chicken',
  time: (at: number) => new Date(at).toISOString().slice(11, 16),
} as const

test('[F87] of what cools it says until when somebody is there, and when its stage ends', () => {
  const cooling = {
    why: 'safety',
    what: 'cooling-due',
    of: 'batch',
    id: 'b1',
    component: 'chicken',
    dueAt: here.now + 70 * 60_000,
    awayFrom: here.now + 20 * 60_000,
  } as const
  const [ends, leave] = [cooling.dueAt, cooling.awayFrom].map((one) => here.time(one))
  expect(doNextWords.why(cooling, here)[0]).toBe(
    `Its stage ends at ${ends}, and nobody said to be there after ${leave}. Read it before, or say who stays. Without a reading it isn’t shown to have cooled.`,
  )
  expect(doNextWords.shortly(cooling, here)).toBe(`Read the cooling herb chicken by ${leave}`)
  const left = { ...cooling, awayFrom: here.now - 60_000 }
  expect(doNextWords.why(left, here)[0]).toContain(
    `By ${ends}, and nobody has said to be there since ${here.time(left.awayFrom)}.`,
  )
  expect(doNextWords.shortly(left, here)).toBe(`Read the cooling herb chicken by ${ends}`)
})
