import { describe, expect, it } from 'vitest'
import type { CommandType } from '#lib/spine/registry.ts'
import { at, choose, codeOf, type Given, given, send, when } from '#tests/support/service.ts'

const of1A = (type: 'start' | 'finish' | 'handOver' | 'cancel' | 'remake'): Given => ({
  type,
  ...at('1A'),
})
const changed = choose('garden-chicken', { slaw: 'no' })

/** Ways in which build 1A came to stand. */
const standing: Readonly<Record<string, readonly Given[]>> = {
  waiting: [],
  making: [of1A('start')],
  made: [of1A('start'), of1A('finish')],
  'handed-over': [of1A('start'), of1A('finish'), of1A('handOver')],
  cancelled: [of1A('cancel')],
  'stopped to change': [
    of1A('start'),
    { type: 'change', readBack: true, ...at('1A'), to: changed },
  ],
  'stopped to cancel': [of1A('start'), of1A('cancel')],
}

const tried: Readonly<Record<string, Given>> = {
  change: {
    type: 'change',
    readBack: true,
    ...at('1A'),
    to: choose('garden-chicken', { cheddar: 'no' }),
  },
  cancel: of1A('cancel'),
  acknowledge: { type: 'acknowledge', ...at('1A'), foodInIt: true },
  start: of1A('start'),
  finish: of1A('finish'),
  takeBack: { type: 'takeBack', ...at('1A'), made: true },
  remake: of1A('remake'),
  handOver: of1A('handOver'),
}

const ok = null
const wrong = 'wrong-state'
const stopped = 'build-stopped'
const none = 'nothing-to-acknowledge'

/** What each command gets, in the order of the states above. */
const table: Readonly<Record<string, readonly (string | null)[]>> = {
  change: [ok, ok, wrong, wrong, wrong, stopped, stopped],
  cancel: [ok, ok, ok, wrong, wrong, stopped, 'already-so'],
  acknowledge: [none, none, none, none, none, ok, ok],
  start: [ok, wrong, wrong, wrong, wrong, wrong, wrong],
  finish: [wrong, ok, wrong, wrong, wrong, stopped, stopped],
  takeBack: [wrong, wrong, ok, wrong, wrong, wrong, wrong],
  remake: [wrong, wrong, ok, ok, wrong, wrong, wrong],
  handOver: [wrong, wrong, ok, wrong, wrong, wrong, wrong],
}

const cases = Object.entries(table).flatMap(([command, row]) =>
  Object.keys(standing).map((state, index) => ({ command, state, gets: row[index] ?? null })),
)

describe('a command to a build', () => {
  it.each(cases)(
    '[S29] $command of a build that is $state gets $gets',
    ({ command, state, gets }) => {
      const told = given(send(choose('garden-chicken')), ...(standing[state] ?? []))
      const given1A = tried[command]
      if (!given1A) throw new Error(`nothing is tried for ${command}`)
      expect(codeOf(when(told, given1A))).toBe(gets)
    },
  )

  it('[S29] names the build and the state that it is in', () => {
    const told = given(send(choose('garden-chicken')), of1A('cancel'))
    expect(when(told, of1A('start'))).toEqual({
      refusal: { code: wrong, build: '1A', state: 'cancelled' },
    })
  })

  it('the table has every command to a build', () => {
    const ofBuilds: CommandType[] = [
      'change',
      'cancel',
      'acknowledge',
      'start',
      'finish',
      'takeBack',
      'remake',
      'handOver',
    ]
    expect(Object.keys(table)).toEqual(ofBuilds)
  })

  it.each(Object.values(tried))(
    '[S30] $type of a ticket or a build that is not there is refused by its name',
    (command) => {
      const told = given(send(choose('garden-chicken')))
      expect(when(told, { ...command, ticket: 9 } as Given)).toEqual({
        refusal: { code: 'unknown', what: 'ticket', id: '9' },
      })
      for (const ticket of [-1, 0.5, 1.5, 1e300])
        expect(when(told, { ...command, ticket } as Given)).toEqual({
          refusal: { code: 'unknown', what: 'ticket', id: String(ticket) },
        })
      expect(when(told, { ...command, letter: 'B' } as Given)).toEqual({
        refusal: { code: 'unknown', what: 'build', id: '1B' },
      })
    },
  )
})
