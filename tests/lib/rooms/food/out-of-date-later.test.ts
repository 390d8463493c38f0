import { describe, expect, it } from 'vitest'
import { at, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  choose,
  eventsOf,
  type Given,
  given,
  at as of,
  send,
  type Told,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const out = (name: string): Given[] => [on(name, 'start'), on(name, 'finish'), on(name, 'handOver')]
const readTuna = (degrees: number, when: number): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id: 'pan-tuna',
  ...read(degrees, { at: minute(when) }),
})
const MIDNIGHT = 14 * 60
const foundSince = (before: Told, after: Told) =>
  after.events
    .slice(before.events.length)
    .filter(({ type }) => type === 'handedOverFound' || type === 'handedOverAnswered')

/** Cold tuna that nobody dated; 1A was made and handed over at ten past ten. */
const lunch = at(given(), 10, send(choose('harbor-tuna')), ...out('1A'))

describe('food that ends with its day', () => {
  it('[S128] lists nothing that was handed over while the date held, though its reading was missed', () => {
    const missed = until(lunch, MIDNIGHT - 1)
    const entry = missed.state.toTell['pan/pan-tuna']
    expect(entry).toMatchObject({ because: 'reading-missed', builds: [{ build: '1A' }] })
    const after = until(missed, MIDNIGHT + 60)
    expect(after.state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'date' })
    expect(foundSince(missed, after)).toEqual([])
    expect(after.state.toTell['pan/pan-tuna']).toEqual(entry)
    const signed = at(after, MIDNIGHT + 61, {
      type: 'throwOut',
      what: 'pan',
      id: 'pan-tuna',
      reason: 'past-date',
      initials: 'KT',
    })
    expect(foundSince(after, signed)).toEqual([])
  })

  it('[S128] nor where it was read until then', () => {
    let told = lunch
    for (let when = 100; when < MIDNIGHT; when += 100) told = at(told, when, readTuna(38, when))
    const after = until(told, MIDNIGHT + 1)
    expect(after.state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'date' })
    expect(foundSince(told, after)).toEqual([])
  })

  it('[S128] but what is found worse of the same builds is said', () => {
    const missed = until(lunch, 200)
    expect(missed.state.toTell['pan/pan-tuna']).toMatchObject({ because: 'reading-missed' })
    const warm = eventsOf(whenAt(missed, 201, readTuna(60, 201), { by: 'in-charge' }))
    expect(warm).toContainEqual(
      expect.objectContaining({
        type: 'handedOverFound',
        because: 'out-of-limits',
        builds: [expect.objectContaining({ build: '1A' })],
      }),
    )
  })
})
