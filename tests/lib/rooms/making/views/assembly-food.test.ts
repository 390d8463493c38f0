import { describe, expect, test } from 'vitest'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { panForBuild } from '#lib/rooms/making/views/assembly-pan.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { handOverView } from '#lib/rooms/shelf/views/hand-over.ts'
import { findPan } from '#lib/station/find.ts'
import { read } from '#tests/support/food.ts'
import {
  buildIn,
  choose,
  given,
  happening,
  onward,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const chicken = choose('garden-chicken')
const one = { ticket: 1, letter: 'A' }
const start = { type: 'start', ...one } as const
const tooCool = { type: 'readTemperature', id: 'pan-chicken', ...read(120) } as const

const panOf = (told: Told, id: string) => {
  const pan = findPan(running(told).station, id)
  if (!pan) throw new Error(`no pan ${id}`)
  return panForBuild(running(told), pan, buildIn(told, '1A').choice, null)
}

describe('a missing scoop', () => {
  test('[A21] the pan shows what stands in for it, as often as the hand takes it', () => {
    const told = given(send(chicken), { type: 'missScoop', component: 'chicken' })
    const measures = running(told).standIns.chicken?.measures ?? []
    const tool = running(told).station.tools.find(({ id }) => id === measures[0]?.id)?.tool
    expect(panOf(told, 'pan-chicken')).toMatchObject({ count: measures[0]?.count, tool })
    expect(panOf(told, 'pan-chicken')).toMatchObject({ instead: measures.slice(1) })
    expect(panOf(given(send(chicken)), 'pan-chicken')).toMatchObject({ instead: null })
  })
})

describe('food that may not be taken', () => {
  test('[A22] a waiting build says that what it takes is off sale, and so does its pan', () => {
    const told = given(send(chicken), tooCool)
    expect(panOf(told, 'pan-chicken')).toMatchObject({ stands: 'off-sale' })
    expect(assemblyView(running(told), null).now).toMatchObject({
      short: true,
      lacks: 'Herb chicken',
      lacksWhy: 'off-sale',
    })
  })

  test('[A22] one in the making is told to wait where its pan wasn’t read', () => {
    const told = happening(given(send(chicken), start), [
      { type: 'readingMissed', what: 'pan', id: 'pan-chicken' },
    ])
    expect(assemblyView(running(told), null).now).toMatchObject({
      short: false,
      lacksWhy: 'off-sale',
    })
    const fine = given(send(chicken), start)
    expect(assemblyView(running(fine), null).now).toMatchObject({ lacks: null, lacksWhy: null })
  })

  test('[A22] too little is no reason of the food', () => {
    const told = given(send(chicken), { type: 'correct', pan: 'pan-chicken', amount: 0 })
    expect(assemblyView(running(told), null).now).toMatchObject({ lacksWhy: 'too-little' })
  })

  test('[A23] a build whose food is thrown out stops, and doesn’t say that it is cancelled', () => {
    const told = given(send(chicken), start, {
      type: 'throwOut',
      what: 'pan',
      id: 'pan-chicken',
      reason: 'out-of-limits',
      initials: 'KT',
    })
    const [stopped] = stoppedBuilds(running(told))
    expect(stopped).toMatchObject({ name: '1A', throwOut: [], differences: null, held: null })
    const changed = onward(given(send(chicken), start), { type: 'cancel', ...one })
    expect(stoppedBuilds(running(changed))[0]).toMatchObject({ throwOut: null })
  })
})

describe('made food and its time', () => {
  const made = given(send(chicken), send(chicken), start, { type: 'finish', ...one })
  const until = buildIn(made, '1A').until
  const madeAt = running(made).at

  test('[H12] the shelf says by when it is collected', () => {
    expect(handOverView(running(made), madeAt).shelf[0]?.until).toEqual(until)
    expect(until?.collectBy).toBeGreaterThan(madeAt)
  })

  test('[H13] from its throw-out time on it isn’t on the shelf any more, but to be thrown out', () => {
    const at = madeAt + 60_000
    const { tickets } = running(made)
    const state = {
      ...running(made),
      tickets: Object.fromEntries(
        Object.entries(tickets).map(([id, ticket]) => [
          id,
          {
            ...ticket,
            builds: ticket.builds.map((build) =>
              build.state === 'made'
                ? { ...build, until: { collectBy: at - 1, throwOutAt: at } }
                : build,
            ),
          },
        ]),
      ),
    }
    expect(handOverView(state, at - 1)).toMatchObject({ toThrowOut: [], shelf: [{ name: '1A' }] })
    expect(handOverView(state, at)).toMatchObject({ toThrowOut: [{ name: '1A', since: at }] })
    expect(handOverView(state, at).shelf).toEqual([])
  })

  test('[H13] thrown out with initials, it is made again', () => {
    const told = onward(made, {
      type: 'throwOut',
      what: 'build',
      id: '1A',
      reason: 'past-time',
      initials: 'KT',
    })
    expect(buildIn(told, '1A')).toMatchObject({ state: 'waiting', remakes: 1 })
  })
})
