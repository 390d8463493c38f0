import { expect, test } from 'vitest'
import { initialsAt } from '#lib/rooms/food/views/kept-initials.ts'

const MINUTE = 60_000
const used = { initials: 'KT', ran: 5 * MINUTE, wall: 1_000 * MINUTE }
const after = (ran: number, wall = ran) =>
  initialsAt(used, { ran: used.ran + ran * MINUTE, wall: used.wall + wall * MINUTE })

test('[F89] initials are offered while a round goes on, and asked anew after a pause', () => {
  expect(after(0)).toBe('KT')
  expect(after(14.9)).toBe('KT')
  expect(after(15)).toBe('')
  expect(initialsAt(null, { ran: 0, wall: 0 })).toBe('')
})

test('[F89] a device that slept, or whose clock was set, asks anew', () => {
  expect(after(1, 600)).toBe('')
  expect(after(1, -5)).toBe('')
  expect(after(-4, 1)).toBe('')
})
