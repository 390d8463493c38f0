import { describe, expect, it } from 'vitest'
import { whoIsThere } from '#lib/rooms/prep/views/who-is-there.ts'

const there = (id: string, on: string, from: string, to: string) => ({
  ...{ id, adult: false, on, from, to },
})

const CREW = [
  there('c1', '2026-12-03', '08:40', '09:30'),
  there('c2', '2026-12-04', '07:30', '12:00'),
  there('c3', '2026-12-04', '08:40', '09:30'),
  there('c4', '2026-12-04', '09:45', '10:24'),
  there('c5', '2026-12-04', '08:40', '09:30'),
]
const TOLD = { c1: 'AB', c2: 'KT', c3: 'EF', c4: 'CD', c5: 'EF' }
const ZONE = 'America/Chicago'
const at = (clock: string): number => Date.parse(`${clock}:00-06:00`)

describe('whose initials are one tap', () => {
  it.each([
    ['those who are there, each once', '2026-12-04T09:00', ['EF', 'KT']],
    [
      'who comes in a quarter of an hour, and who left one ago',
      '2026-12-04T09:30',
      ['CD', 'EF', 'KT'],
    ],
    ['a minute later who left is gone', '2026-12-04T09:46', ['CD', 'KT']],
    ['between the bells all of the day', '2026-12-04T12:30', ['CD', 'EF', 'KT']],
    [
      'on a day that nobody is said for all of the plan',
      '2026-12-02T09:00',
      ['AB', 'CD', 'EF', 'KT'],
    ],
  ])('[PP60] %s', (_, now, names) => {
    expect(whoIsThere({ crew: CREW }, TOLD, at(now), ZONE)).toEqual(names)
  })

  it('[PP60] whose initials are gone from the second file isn’t offered by a number', () => {
    expect(whoIsThere({ crew: CREW }, { c2: 'KT' }, at('2026-12-04T09:00'), ZONE)).toEqual(['KT'])
    expect(whoIsThere({ crew: CREW }, {}, at('2026-12-04T09:00'), ZONE)).toEqual([])
  })
})
