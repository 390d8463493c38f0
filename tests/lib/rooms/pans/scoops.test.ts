import { describe, expect, it } from 'vitest'
import { at as foodAt, read, until } from '#tests/support/food.ts'
import {
  at,
  buildIn,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  needs,
  onward,
  ready,
  refusalOf,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const milkApart = needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' })
/** Its slaw is taken from the back-up pan: the one on the line stands beside the cheddar. */
const suits = choose(
  'garden-chicken',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
  { base: 'rice', ...milkApart },
)
const of1A = (...types: ('start' | 'finish' | 'handOver')[]): Given[] =>
  types.map((type) => ({ type, ...at('1A'), ...(type === 'start' ? { read: true } : {}) }))
const stages = {
  waiting: ready(send(suits)),
  making: ready(send(suits), ...of1A('start')),
  made: ready(send(suits), ...of1A('start', 'finish')),
  'handed-over': ready(send(suits), ...of1A('start', 'finish', 'handOver')),
} as const
const soil = (pan: string, by: string, backup?: boolean): Given => ({
  type: 'soilPan',
  pan,
  by,
  backup,
})
const { amount: _, ...putIn } = changePan('pan-slaw', 0) as Extract<Given, { type: 'changePan' }>
/** The back-up pan of slaw is put in, or a new one. */
const changeSlaw = (backup: boolean): Given =>
  backup ? { ...putIn, from: 'back-up-slaw' } : changePan('pan-slaw', 900_000)
const soiledIn = ({ state }: Told, pan: string) => state.pans[pan]?.soiledBy
const holdOf = (told: Told) => buildIn(told, '1A').hold?.reason ?? null

describe('a scoop in another pan', () => {
  it('[S81] soils both: what it went into, and what it goes back to', () => {
    const soiled = given(soil('pan-rice', 'cheddar'))
    expect(soiledIn(soiled, 'pan-rice')).toEqual(['cheddar'])
    expect(soiledIn(soiled, 'pan-cheddar')).toEqual(['rice'])
    expect(codeOf(when(soiled, soil('pan-rice', 'cheddar')))).toBe('already-so')
    expect(codeOf(when(soiled, soil('pan-cheddar', 'rice')))).toBe('already-so')
  })

  it('[S81] is cleared from each by its own change, and told anew where it happens again', () => {
    const one: Given = changePan('pan-cheddar', 300_000)
    const changed = onward(given(soil('pan-rice', 'cheddar')), one)
    expect(soiledIn(changed, 'pan-cheddar')).toEqual([])
    expect(soiledIn(changed, 'pan-rice')).toEqual(['cheddar'])
    const again = onward(changed, soil('pan-rice', 'cheddar'))
    expect(soiledIn(again, 'pan-cheddar')).toEqual(['rice'])
    expect(soiledIn(again, 'pan-rice')).toEqual(['cheddar'])
  })

  it('[S81] holds the guest of the food whose scoop it was', () => {
    const rice = choose(
      'garden-chicken',
      { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
      {
        base: 'rice',
        ...milkApart,
      },
    )
    const told = ready(send(rice))
    expect(holdOf(onward(told, soil('pan-cheddar', 'rice')))).toBe('contact')
  })

  it('[S85] that was the back-up leaves it not ready, and holds what was made with it too', () => {
    for (const stage of ['waiting', 'making', 'made'] as const) {
      const decision = when(stages[stage], soil('pan-slaw', 'cheddar', true), { by: 'assembly' })
      expect(eventsOf(decision)).toEqual([
        {
          type: 'backupSet',
          component: 'slaw',
          ready: false,
          backup: 'back-up-slaw',
          soiledBy: 'cheddar',
        },
        { type: 'buildHeld', ...at('1A'), reason: 'contact' },
      ])
    }
    const over = eventsOf(when(stages['handed-over'], soil('pan-slaw', 'cheddar', true)))
    expect(over.slice(1)).toEqual([{ type: 'buildHeld', ...at('1A'), reason: 'contact' }])
    expect(soiledIn(onward(stages.made, soil('pan-slaw', 'cheddar', true)), 'pan-slaw')).toEqual([])
  })

  it('[S81] soils what it goes back to as well where it was the back-up that it was in', () => {
    const told = onward(stages.waiting, soil('pan-slaw', 'cheddar', true))
    expect(soiledIn(told, 'pan-cheddar')).toEqual(['slaw'])
    expect(soiledIn(told, 'pan-slaw')).toEqual([])
    expect(told.state.backupPans['back-up-slaw']?.soiledBy).toEqual(['cheddar'])
    const bare = { ...stages.waiting.state, backupPans: {} }
    const older = when({ ...stages.waiting, state: bare }, soil('pan-slaw', 'cheddar', true))
    expect(eventsOf(older)[0]).toEqual({
      type: 'backupSet',
      component: 'slaw',
      ready: false,
      soiledBy: 'cheddar',
    })
  })

  it('[S85] is told of a back-up that is off sale too, so that no reading makes it ready again', () => {
    const readBackup = (degrees: number): Given => ({
      type: 'readTemperature',
      what: 'backup',
      id: 'back-up-slaw',
      ...read(degrees),
    })
    const late = until(stages.made, 250)
    expect(late.state.backupPans['back-up-slaw']?.offSale?.why).toBe('reading-missed')
    expect(late.state.backups.slaw).toBeUndefined()
    const soiled = foodAt(stages.made, 126, soil('pan-slaw', 'cheddar', true))
    expect(soiled.state.backupPans['back-up-slaw']).toMatchObject({
      offSale: { why: 'reading-missed' },
      soiledBy: ['cheddar'],
      guarded: false,
    })
    expect(holdOf(soiled)).toBe('contact')
    const again = foodAt(soiled, 127, readBackup(38))
    expect(again.state.backupPans['back-up-slaw']?.offSale).toBeNull()
    expect(again.state.backups.slaw).toBeUndefined()
  })

  it('[S85] went into a back-up only where one stands ready', () => {
    const none = { code: 'unknown', what: 'protected-backup', id: 'slaw' }
    expect(refusalOf(when(given(), soil('pan-slaw', 'cheddar', true)))).toEqual(none)
    const gone = onward(stages.waiting, soil('pan-slaw', 'cheddar', true))
    // That it was in there is known; another scoop may have been in there too.
    expect(refusalOf(when(gone, soil('pan-slaw', 'cheddar', true)))).toEqual({ code: 'already-so' })
    expect(refusalOf(when(gone, soil('pan-slaw', 'almonds', true)))).toBeNull()
  })
})

describe('a back-up pan', () => {
  it('[S86] that was put in for its component’s pan doesn’t stand ready any more', () => {
    const changed = onward(stages.waiting, changeSlaw(true))
    expect(Object.keys(changed.state.backups)).not.toContain('slaw')
    expect(changed.state.backupPans['back-up-slaw']).toMatchObject({ amount: 0 })
    expect(holdOf(changed)).toBe('contact')
    const other = onward(stages.waiting, changeSlaw(false))
    expect(Object.keys(other.state.backups)).toContain('slaw')
    expect(holdOf(other)).toBeNull()
    expect(refusalOf(when(given(), changeSlaw(true)))).toEqual({
      code: 'nothing-there',
      id: 'back-up-slaw',
    })
  })

  it.each([
    ['put away', { type: 'setBackup', component: 'slaw', ready: false } as Given],
    ['put in', changeSlaw(true)],
  ])('[S87] that is %s holds what waits or is being made, never what was made', (_, gone) => {
    expect(holdOf(onward(stages.waiting, gone))).toBe('contact')
    expect(holdOf(onward(stages.making, gone))).toBe('contact')
    expect(holdOf(onward(stages.made, gone))).toBeNull()
    expect(holdOf(onward(stages['handed-over'], gone))).toBeNull()
  })

  it('[S87] that goes away holds what made or handed-over food is to become', () => {
    for (const stage of ['made', 'handed-over'] as const) {
      const pending = onward(
        stages[stage],
        {
          type: 'tellNeed',
          ...at('1A'),
          asked: 'needs',
          needs: [{ code: 'fish', handling: 'leave-out', reason: null }],
        },
        {
          type: 'change',
          ...at('1A'),
          to: {
            ...suits,
            needs: [...suits.needs, { code: 'fish', handling: 'leave-out', reason: null }],
          },
          readBack: true,
        },
      )
      const gone = onward(pending, { type: 'setBackup', component: 'slaw', ready: false })
      expect(buildIn(gone, '1A').stop?.to).toBeNull()
      expect(holdOf(onward(gone, { type: 'acknowledge', ...at('1A'), foodInIt: true }))).toBe(
        'need',
      )
    }
  })
})
