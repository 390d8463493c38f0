import { describe, expect, test } from 'vitest'
import { type Asker, maySee, rightsProblem, TO_THE_HOUSE } from '#lib/access/rights.ts'
import { mayActAs } from '#lib/access/roles-granted.ts'
import { triesOf } from '#lib/access/tries.ts'
import { ROLES } from '#lib/service/roles.ts'
import { COMMAND_TYPES, type Command, commandSchema } from '#lib/spine/registry.ts'
import { ONE_OF_EACH } from '#tests/support/one-of-each.ts'

const tablet: Asker = { kind: 'proved', device: 'd-1', station: 'alder-hall', role: 'lead' }
const walker: Asker = { kind: 'demo', role: 'lead' }

const SERVICES = [
  { station: 'alder-hall', kind: 'real' },
  { station: 'alder-hall', kind: 'demo' },
  { station: 'birch-hall', kind: 'real' },
  { station: 'birch-hall', kind: 'demo' },
] as const

const commands = COMMAND_TYPES.map((type) => commandSchema.parse(ONE_OF_EACH[type]))

describe('which roles a device acts as', () => {
  test('[D6] its own and those of less, and no role gets to one of more by way of another', () => {
    const table = ROLES.map((proved) => ROLES.filter((asked) => mayActAs(proved, asked)))
    expect(Object.fromEntries(ROLES.map((role, index) => [role, table[index]]))).toEqual({
      counter: ['counter', 'pick-up'],
      assembly: ['assembly', 'pick-up'],
      'hand-over': ['hand-over', 'pick-up'],
      lead: ['counter', 'assembly', 'hand-over', 'lead', 'pick-up'],
      'in-charge': [...ROLES],
      'pick-up': ['pick-up'],
    })
    for (const one of ROLES)
      for (const other of ROLES)
        for (const third of ROLES)
          if (mayActAs(one, other) && mayActAs(other, third))
            expect(mayActAs(one, third), `${one} ${third}`).toBe(true)
  })
})

describe('whose a service is', () => {
  test('[D7] of the device’s own station; whoever walks the demo sees the demo', () => {
    expect(SERVICES.map((one) => maySee(tablet, one))).toEqual([true, true, false, false])
    expect(SERVICES.map((one) => maySee(walker, one))).toEqual([false, true, false, true])
  })

  test.each(commands)('[D7] $type is taken for a service of the asker only', (command) => {
    if (command.type === 'open' || command.type === 'plan') return
    const of = (asker: Asker, hasProof = false) =>
      [...SERVICES, null].map((one) => rightsProblem(asker, command, one, hasProof))
    const none = 'no-such-service'
    expect(of(tablet)).toEqual([null, null, none, none, none])
    expect(of(tablet, true)).toEqual([null, null, none, none, none])
    const demo = TO_THE_HOUSE.includes(command.type) ? 'not-proved' : null
    expect(of(walker)).toEqual(['not-joined', demo, 'not-joined', demo, none])
    expect(of(walker, true)).toEqual(Array(5).fill('not-proved'))
  })

  test('[D7] a device opens a service of its station, who walks the demo a demo and nothing real', () => {
    const [real, demo] = SERVICES
    const open = (
      asker: Asker,
      station: string,
      kind: 'real' | 'demo',
      newest: (typeof SERVICES)[number] | null = demo,
    ) => rightsProblem(asker, { type: 'open', station, kind }, newest, false)
    expect(open(tablet, 'alder-hall', 'real')).toBeNull()
    expect(open(tablet, 'birch-hall', 'real')).toBe('no-such-service')
    expect(open(walker, 'alder-hall', 'real')).toBe('not-proved')
    expect(open(walker, 'alder-hall', 'demo')).toBeNull()
    // Let in while a demo was the newest, it stays no longer than that.
    expect(open(walker, 'alder-hall', 'demo', real)).toBe('not-joined')
    expect(open(walker, 'alder-hall', 'demo', null)).toBe('not-joined')
    expect(open(tablet, 'alder-hall', 'demo', real)).toBeNull()
  })

  test('[D7] a device plans a service of its station, and who walks the demo none', () => {
    const plan = (asker: Asker, station: string) =>
      SERVICES.map((newest) =>
        rightsProblem(asker, { ...ONE_OF_EACH.plan, station } as Command, newest, false),
      )
    expect(plan(tablet, 'alder-hall')).toEqual([null, null, null, null])
    expect(plan(tablet, 'birch-hall')).toEqual(Array(4).fill('no-such-service'))
    expect(plan(walker, 'alder-hall')).toEqual(Array(4).fill('not-proved'))
  })

  test('[D7] who walks the demo changes no label, which real services have after it', () => {
    const command = { type: 'notSameProduct', ingredient: 'pita' } as const
    expect(rightsProblem(walker, command, SERVICES[1], false)).toBe('not-proved')
    expect(rightsProblem(tablet, command, SERVICES[1], false)).toBeNull()
  })
})

test('[D12] a stranger’s tries are counted with the address, a proved device’s with nobody’s', () => {
  expect(triesOf(null, '10.0.0.1')).not.toBe(triesOf(null, '10.0.0.2'))
  expect(triesOf('d-1', '10.0.0.1')).toBe(triesOf('d-1', '10.0.0.2'))
  expect(triesOf('10.0.0.1', 'x')).not.toBe(triesOf(null, '10.0.0.1'))
})
