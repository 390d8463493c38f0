import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import { FIELD_CLASSES, type FieldClass } from '#lib/access/seen/classes.ts'
import { EVENTS, STAMP } from '#lib/access/seen/event-fields.ts'
import { FORECAST } from '#lib/access/seen/forecast-fields.ts'
import { STATE } from '#lib/access/seen/state-fields.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { ROLES } from '#lib/service/roles.ts'
import type { RunningState } from '#lib/service/state.ts'
import { STATION as STATION_ID } from '#tests/support/access-room.ts'
import { canariesIn, canariesOf, planted, UNKNOWN } from '#tests/support/canaries.ts'
import { settle } from '#tests/support/rail-room.ts'
import { connectScreen, createSocketRoom } from '#tests/support/socket-room.ts'
import { root } from '#tests/support/source-tree.ts'

/** The table as PROTOCOL.md shows it: the classes that each role is sent. */
const written = (): ReadonlyMap<string, readonly string[]> => {
  const text = readFileSync(join(root, 'lib', 'protocol', 'PROTOCOL.md'), 'utf8')
  const [, part = ''] = text.split('<!-- fields: ')
  const rows = part
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .slice(0, FIELD_CLASSES.length + 2)
    .map((line) => line.split('|').map((cell) => cell.trim().replaceAll('`', '')))
  const [head = [], , ...body] = rows
  return new Map(
    ROLES.map((role) => [
      role,
      body.filter((row) => row[head.indexOf(role)] === 'sent').map((row) => row[1] ?? ''),
    ]),
  )
}

const TYPES = Object.keys(EVENTS) as Recorded['type'][]

/** Of each event, the state and a forecast, with its name before each path. */
const WHOLE = Object.fromEntries([
  ...TYPES.map((type) => [type, { ...EVENTS[type], ...STAMP }] as const),
  ['state', STATE],
  ['forecast', FORECAST],
])

/** A device is told of its own station only, so that this one has to be it. */
const LEFT_TRUE = ['forecast.service', 'state.station.id']
const canaries = canariesOf(WHOLE).filter(({ path }) => !LEFT_TRUE.includes(path))

describe('the table of fields, tried against a running server', () => {
  test.each(ROLES)('[V11] a %s is sent what it says, and nothing else', async (role) => {
    const classes = written().get(role) ?? []
    const { url, services, forecast } = await createSocketRoom()
    const rail = services.current('alder-hall')
    if (!rail) throw new Error('no service is open')
    const values = planted(WHOLE) as Record<string, object>
    const events = TYPES.map((type) => Object.assign({}, values[type], { type }) as Recorded)
    const canary = Object.assign({}, values.state) as RunningState
    const state: RunningState = { ...canary, station: { ...canary.station, id: STATION_ID } }
    if (role !== 'pick-up') {
      vi.spyOn(rail, 'eventsAfter').mockImplementation((after) => (after > 9 ? null : events))
      vi.spyOn(rail, 'state').mockReturnValue(state)
    }
    forecast(Object.assign({}, values.forecast, { service: 's-lunch' }) as never)
    const screen = await connectScreen(url, role)
    // What was planned is told as a state from its beginning on, and by events since.
    const replies = [await screen.follow(1), await screen.follow(10)]
    await settle()
    await screen.socket.timeout(5_000).emitWithAck('command', null)
    vi.restoreAllMocks()

    const all = [replies, screen.heard]
    const sent = new Set(canariesIn(all))
    expect(JSON.stringify([events, state])).toContain(UNKNOWN)
    expect(JSON.stringify(all)).not.toContain(UNKNOWN)
    const isSent = (fieldClass: FieldClass) => classes.includes(fieldClass)
    const cells = canaries.map(({ path, fieldClass }) => ({ path, should: isSent(fieldClass) }))
    expect(cells.length).toBeGreaterThan(600)
    expect(cells.filter(({ path, should }) => sent.has(path) !== should)).toEqual([])
  })
})
