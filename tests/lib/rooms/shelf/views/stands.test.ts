import { describe, expect, test } from 'vitest'
import { handOverView } from '#lib/rooms/shelf/views/hand-over.ts'
import { beingMade, standsLong, standsOf } from '#lib/rooms/shelf/views/stands.ts'
import {
  at,
  choose,
  needs,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const plain = () => choose('garden-chicken')
const apart = () =>
  choose(
    'bean-and-pepper',
    { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
    needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
  )
const made = (told: Told, ...names: string[]): Told =>
  names.reduce(
    (so, name) =>
      onward(so, { type: 'start', ...at(name), read: true }, { type: 'finish', ...at(name) }),
    told,
  )
const shown = (told: Told, now = running(told).at) => {
  const { shelf } = handOverView(running(told), now)
  return { shelf, ...standsOf(running(told), shelf, now) }
}

describe('how builds stand on the shelf', () => {
  test('[H31] one ticket’s stand together, by letter, with the one that isn’t made yet', () => {
    const told = made(ready(send(plain(), plain(), plain()), send(plain())), '2A', '1B')
    const { stands, missing } = shown(told)
    expect(stands).toEqual([
      { ticket: 2, names: ['2A'], atEnd: false, onTray: false },
      { ticket: 1, names: ['1A', '1B', '1C'], atEnd: false, onTray: true },
    ])
    expect(missing).toEqual(['1A', '1C'])
    const less = onward(told, { type: 'cancel', ...at('1C') })
    expect(shown(less).missing).toEqual(['1A'])
  })

  test('[H31] on its tray still stands what is left of a ticket', () => {
    const told = made(ready(send(plain(), plain())), '1A', '1B')
    const left = onward(told, { type: 'handOver', ...at('1A') })
    expect(shown(left).stands).toMatchObject([{ names: ['1B'], onTray: true }])
  })

  test('[H31] what is kept apart stands by itself at the end, and shows no line', () => {
    const told = made(ready(send(plain(), apart(), plain())), '1A', '1B')
    const { stands, missing, shelf } = shown(told)
    expect(stands).toEqual([
      { ticket: 1, names: ['1A', '1C'], atEnd: false, onTray: true },
      { ticket: 1, names: ['1B'], atEnd: true, onTray: false },
    ])
    expect(missing).toEqual(['1C'])
    expect(shelf.map(({ strip }) => strip === null)).toEqual([false, true])
    const making = onward(ready(send(apart())), { type: 'start', ...at('1A'), read: true })
    expect(beingMade(running(making))).toEqual([{ name: '1A', strip: null }])
  })

  test('[H33] with a third of its time left it moves to the end, and not before', () => {
    const told = made(ready(send(plain())), '1A')
    const [build] = shown(told).shelf
    if (!build?.until) throw new Error('nothing binds it')
    const { collectBy } = build.until
    const turn = collectBy - (collectBy - build.madeAt) / 3
    expect(standsLong(build, turn - 1)).toBe(false)
    expect(standsLong(build, turn)).toBe(true)
    expect(shown(told, turn - 1).stands[0]?.atEnd).toBe(false)
    expect(shown(told, turn).stands[0]?.atEnd).toBe(true)
    expect(standsLong({ ...build, until: null }, turn)).toBe(false)
  })
})
