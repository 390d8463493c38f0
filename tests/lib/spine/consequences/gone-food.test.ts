import { describe, expect, it } from 'vitest'
import type { DiscardSignedOff } from '#lib/service/events/food-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { madeOfGone, stopsOfGone } from '#lib/spine/consequences/gone-food.ts'
import { asked, buildWith, toThrowOut, touched } from '#tests/support/happened.ts'
import {
  choose,
  type Given,
  given,
  at as of,
  ready,
  running,
  send,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish'): Given => ({ type, ...of(name) })
const signed = (what: 'pan' | 'backup', id: string): DiscardSignedOff => ({
  type: 'discardSignedOff',
  what,
  id,
  amount: 1,
  reason: 'not-cooked',
})
const names = (events: readonly object[]): readonly string[] =>
  events.map((one) => ('ticket' in one && 'letter' in one ? `${one.ticket}${one.letter}` : ''))

/** 1A with chicken and 2A with tuna are being made, 3A with chicken waits. */
const making = running(
  given(
    ...[choose('garden-chicken'), choose('harbor-tuna'), choose('garden-chicken')].map((one) =>
      send(one),
    ),
    on('1A', 'start'),
    on('2A', 'start'),
  ),
)
const stopped = (before: RunningState) =>
  asked(stopsOfGone, before, toThrowOut(before, 'pan', 'pan-chicken'))

describe('what is being made with food that is thrown out', () => {
  it('[B32] is stopped where it takes some of it, and nothing else is', () => {
    expect(stopped(making)).toEqual([
      { type: 'buildStopped', ticket: 1, letter: 'A', reason: 'throw-out', to: null },
    ])
    const taking = (amount: number) =>
      stopped(buildWith(making, '1A', { takes: { chicken: amount } }))
    expect(names(taking(1))).toEqual(['1A'])
    expect(taking(0)).toEqual([])
    expect(stopped(buildWith(making, '1A', { takes: {} }))).toEqual([])
    expect(asked(stopsOfGone, making, touched(making, 'pans'))).toEqual([])
  })

  it('[B32] is stopped as well where somebody threw it out, on the line or behind it', () => {
    const thrown = (slice: 'pans' | 'backupPans', event: DiscardSignedOff) =>
      names(asked(stopsOfGone, making, touched(making, slice), [event]))
    expect(thrown('pans', signed('pan', 'pan-tuna'))).toEqual(['2A'])
    expect(thrown('backupPans', signed('backup', 'back-up-tuna'))).toEqual(['2A'])
  })
})

describe('what stands made of food that is thrown out', () => {
  const made = running(ready(send(choose('garden-chicken')), on('1A', 'start'), on('1A', 'finish')))

  it('[B32] goes with it, on the line or behind it', () => {
    const passed = { type: 'throwOutPassed', what: 'build', id: '1A', because: 'out-of-limits' }
    const after = touched(made, 'pans')
    expect(asked(madeOfGone, made, after, [signed('pan', 'pan-chicken')])).toEqual([passed])
    const load = made.backupPans['back-up-chicken']?.load ?? 0
    const behind = buildWith(made, '1A', {
      took: [{ pan: 'back-up-chicken', amount: 10, load }] as never,
    })
    const gone = [signed('backup', 'back-up-chicken')]
    expect(asked(madeOfGone, behind, touched(behind, 'backupPans'), gone)).toEqual([passed])
    expect(asked(madeOfGone, made, touched(made, 'backupPans'), gone)).toEqual([])
  })
})
