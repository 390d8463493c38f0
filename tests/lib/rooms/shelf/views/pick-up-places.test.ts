import { expect, test } from 'vitest'
import { type PickUpPicture, pickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import { type PickUpPlace, ROOM, standingIn } from '#lib/rooms/shelf/views/pick-up-places.ts'
import { at, choose, type Given, given, running, send } from '#tests/support/service.ts'

const orders = (count: number): Given[] =>
  Array.from({ length: count }, () => send(choose('harbor-tuna', { slaw: 'no', cheddar: 'no' })))

const make = (name: string): Given[] => [
  { type: 'start', ...at(name) },
  { type: 'finish', ...at(name) },
]

const single = (state: PickUpPlace, count: number): PickUpPicture['builds'] =>
  Array.from({ length: count }, (_, since) => ({ name: `${since + 1}A`, state, since }))

const picture = (builds: PickUpPicture['builds']): PickUpPicture => ({
  open: true,
  station: '',
  wells: [],
  builds,
})

const namesIn = (seen: PickUpPicture, place: PickUpPlace) =>
  standingIn(seen, place).tiles.map(({ builds }) => builds.map(({ name }) => name).join(' '))

test('[PU1] each number stands where its build is, and nowhere once it is handed over', () => {
  const seen = pickUpPicture(
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
  expect((['waiting', 'making', 'made'] as const).map((place) => namesIn(seen, place))).toEqual([
    ['4A'],
    ['3A'],
    ['2A'],
  ])
})

test('[PU2] on the shelf the one that has stood longest comes first', () => {
  const seen = pickUpPicture(running(given(...orders(3), ...make('3A'), ...make('1A'))))
  expect(namesIn(seen, 'made')).toEqual(['3A', '1A'])
})

test('[PU3] what there is no room for is counted, and all are counted or shown', () => {
  for (const place of ['waiting', 'making', 'made', 'called'] as const)
    for (const count of [0, 1, ROOM[place], ROOM[place] + 1, 45]) {
      const { tiles, more } = standingIn(picture(single(place, count)), place)
      expect(tiles.length + more).toBe(count)
      expect(tiles.length + (more > 0 ? 1 : 0)).toBeLessThanOrEqual(ROOM[place])
    }
})

test('[PU6] a ticket is one tile on the shelf: its letters in order, those still to come among them', () => {
  const seen = picture([
    { name: '9A', state: 'called', since: 5 },
    { name: '10A', state: 'making', since: 6 },
    { name: '10B', state: 'made', since: 9 },
    { name: '10C', state: 'waiting', since: 1 },
    { name: '11A', state: 'made', since: 8 },
    { name: '12A', state: 'making', since: 4 },
    { name: '12B', state: 'waiting', since: 2 },
    { name: '13A', state: 'waiting', since: 3 },
    { name: '13B', state: 'waiting', since: 3 },
  ])
  expect(namesIn(seen, 'made')).toEqual(['11A', '10A 10B 10C'])
  expect(standingIn(seen, 'made').tiles.map(({ number }) => number)).toEqual(['11', '10'])
  // Each that is being made is a wrap of its own; 10-C is told on the shelf, and 12 waits for its B.
  expect(namesIn(seen, 'making')).toEqual(['12A', '10A'])
  expect(namesIn(seen, 'waiting')).toEqual(['12B', '13A 13B'])
  expect(namesIn(seen, 'called')).toEqual(['9A'])
})

test('[PU4] the picture tells numbers, states, times and the bare line, and nothing of the guest', () => {
  const seen = pickUpPicture(
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
  expect(Object.keys(seen).sort()).toEqual(['builds', 'open', 'station', 'wells'])
  expect(seen.wells).toEqual([2, 3, 3, 2])
  expect(seen.builds.map((build) => Object.keys(build).sort())).toEqual([
    ['name', 'since', 'state'],
  ])
  expect(JSON.stringify(seen)).not.toMatch(/milk|bean|allergy/)
})

test('[PU5] a held number is asked to the counter, whether it was being made or stood ready', () => {
  const told = (name: string): Given => ({
    type: 'tellNeed',
    ...at(name),
    asked: 'needs',
    needs: [{ code: 'milk', handling: 'leave-out', reason: null }],
  })
  const seen = pickUpPicture(
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
  expect(seen.builds.map(({ name, state }) => [name, state]).sort()).toEqual([
    ['1A', 'called'],
    ['2A', 'made'],
    ['3A', 'called'],
  ])
  expect(namesIn(seen, 'called')).toEqual(['1A', '3A'])
  expect(namesIn(seen, 'waiting')).toEqual([])
})

test('[R36] as many tiles are shown as there is room for', () => {
  for (const [place, most] of [
    ['waiting', 18],
    ['making', 6],
    ['made', 24],
  ] as const) {
    expect(standingIn(picture(single(place, most)), place)).toMatchObject({ more: 0 })
    expect(standingIn(picture(single(place, most + 1)), place)).toMatchObject({ more: 2 })
  }
})
