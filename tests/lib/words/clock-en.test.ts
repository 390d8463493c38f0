import { expect, test } from 'vitest'
import { sayClock, sayLength } from '#lib/words/clock-en.ts'

test('[P13] a time of day is the station’s, whatever the tablet’s zone', () => {
  const at = Date.parse('2026-11-25T17:42:00Z')
  expect(sayClock(at, 'America/Chicago').replace(/\s/u, ' ')).toBe('11:42 AM')
  expect(sayClock(at, 'America/New_York').replace(/\s/u, ' ')).toBe('12:42 PM')
})

test('[P13] a length of time is cut to whole seconds and never below zero', () => {
  expect([-500, 999, 42_000, 725_999, 3_729_000].map(sayLength)).toEqual([
    '0:00',
    '0:00',
    '0:42',
    '12:05',
    '1:02:09',
  ])
})
