import { expect, test } from 'vitest'
import { pickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import { ROOM, standingIn } from '#lib/rooms/shelf/views/pick-up-places.ts'
import { at, choose, type Given, given, running, send } from '#tests/support/service.ts'

const orders = (count: number): Given[] =>
  Array.from({ length: count }, () => send(choose('harbor-tuna', { slaw: 'no', cheddar: 'no' })))

const make = (name: string): Given[] => [
  { type: 'start', ...at(name) },
  { type: 'finish', ...at(name) },
]

test('[PU1] each number stands where its build is, and nowhere once it is handed over', () => {
  const picture = pickUpPicture(
    running(
      given(
        ...orders(4),
        ...make('2A'),
        ...make('1A'),
        { type: 'start', ...at('3A') },
        { type: 'handOver', ...at('1A') },
      ),
    ),
  )
  const names = (place: 'waiting' | 'making' | 'made') =>
    standingIn(picture, place).builds.map((build) => build.name)
  expect([names('waiting'), names('making'), names('made')]).toEqual([['4A'], ['3A'], ['2A']])
})

test('[PU2] on the shelf the one that has stood longest comes first', () => {
  const picture = pickUpPicture(running(given(...orders(3), ...make('3A'), ...make('1A'))))
  expect(standingIn(picture, 'made').builds.map((build) => build.name)).toEqual(['3A', '1A'])
})

test('[PU3] what there is no room for is counted, and all are counted or shown', () => {
  const waiting = (count: number) => ({
    open: true,
    station: '',
    wells: [],
    builds: Array.from({ length: count }, (_, since) => ({
      name: `${since + 1}A`,
      state: 'waiting' as const,
      since,
    })),
  })
  for (const count of [0, 1, ROOM.waiting, ROOM.waiting + 1, 45]) {
    const { builds, more, columns, rows } = standingIn(waiting(count), 'waiting')
    expect(builds.length + more).toBe(count)
    expect(builds.length + (more > 0 ? 1 : 0)).toBeLessThanOrEqual(ROOM.waiting)
    expect(columns * rows).toBeGreaterThanOrEqual(builds.length + (more > 0 ? 1 : 0))
  }
})

test('[PU4] the picture tells numbers, states, times and the bare line, and nothing of the guest', () => {
  const picture = pickUpPicture(
    running(
      given({
        type: 'send',
        readBack: true,
        builds: [
          choose(
            'bean-and-pepper',
            { cheddar: 'no', 'yogurt-sauce': 'no' },
            {
              asked: 'needs',
              needs: [{ code: 'milk', handling: 'leave-out', reason: 'allergy' }],
            },
          ),
        ],
      }),
    ),
  )
  expect(Object.keys(picture).sort()).toEqual(['builds', 'open', 'station', 'wells'])
  expect(picture.wells).toEqual([2, 3, 3, 2])
  expect(picture.builds.map((build) => Object.keys(build).sort())).toEqual([
    ['name', 'since', 'state'],
  ])
  expect(JSON.stringify(picture)).not.toMatch(/milk|bean|allergy/)
})

test('[PU5] a held number is asked to the counter, whether it was being made or stood ready', () => {
  const told = (name: string): Given => ({
    type: 'tellNeed',
    ...at(name),
    asked: 'needs',
    needs: [{ code: 'milk', handling: 'leave-out', reason: null }],
  })
  const picture = pickUpPicture(
    running(
      given(
        ...orders(3),
        ...make('1A'),
        ...make('2A'),
        { type: 'start', ...at('3A') },
        told('1A'),
        told('3A'),
      ),
    ),
  )
  expect(picture.builds.map(({ name, state }) => [name, state]).sort()).toEqual([
    ['1A', 'called'],
    ['2A', 'made'],
    ['3A', 'called'],
  ])
  expect(standingIn(picture, 'called').builds.map((build) => build.name)).toEqual(['1A', '3A'])
  expect(standingIn(picture, 'waiting').builds).toEqual([])
})

test('[R36] as many numbers are shown as can be read, and ready ones stay large', () => {
  const picture = (state: 'waiting' | 'making' | 'made', count: number) => ({
    open: true,
    station: '',
    wells: [],
    builds: Array.from({ length: count }, (_, since) => ({ name: `${since + 1}A`, state, since })),
  })
  for (const [place, most] of [
    ['waiting', 18],
    ['making', 6],
    ['made', 24],
  ] as const) {
    expect(standingIn(picture(place, most), place)).toMatchObject({ more: 0 })
    expect(standingIn(picture(place, most + 1), place)).toMatchObject({ more: 2 })
  }
  expect(standingIn(picture('made', 9), 'made')).toMatchObject({ columns: 3, rows: 3 })
  expect(standingIn(picture('made', 18), 'made')).toMatchObject({ columns: 3, rows: 6 })
  expect(standingIn(picture('made', 24), 'made')).toMatchObject({ columns: 4, rows: 6 })
})
