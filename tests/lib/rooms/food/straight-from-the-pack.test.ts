import { describe, expect, it } from 'vitest'
import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { putSources } from '#lib/rooms/pans/views/put-sources.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import { at, madeBefore, minute, read, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  demoStation,
  type Given,
  given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

const TODAY = '2026-11-25'
const slaw = ofPortions('slaw', 10)
const cheddar = ofPortions('cheddar', 10)
const load = (component: 'slaw' | 'cheddar', over: object = {}): Given => ({
  type: 'load',
  pan: `pan-${component}`,
  amount: component === 'slaw' ? slaw : cheddar,
  ...read(38),
  ...over,
})
/** A batch, and a reading of it above 41 °F: it is off sale. */
const readWarm = (component: 'slaw' | 'cheddar'): Told =>
  at(openedService(), 1, ...madeBefore('b1', component), {
    type: 'readTemperature',
    what: 'batch',
    id: 'b1',
    ...read(55),
  })

describe('cold food that is put in without a name', () => {
  it('[F60] is refused where it is made here: a batch that was read warm isn’t loaded as something else', () => {
    const warm = readWarm('slaw')
    expect(warm.state.batches.b1?.offSale).toMatchObject({ why: 'out-of-limits' })
    expect(refusalOf(whenAt(warm, 2, load('slaw', { batch: 'b1' })))).toMatchObject({
      problem: { code: 'off-sale' },
    })
    const refused = { code: 'no-batch', component: 'slaw' }
    expect(refusalOf(whenAt(warm, 2, load('slaw')))).toEqual(refused)
    // Nor does it come out of a pack because somebody says so: its label is the recipe's.
    const said = { bought: true, preparedOn: TODAY }
    expect(refusalOf(whenAt(warm, 2, load('slaw', said)))).toEqual(refused)
    const { pan: _, ...food } = load('slaw') as Extract<Given, { type: 'load' }>
    const fill = { ...food, type: 'setBackup', component: 'slaw', ready: true }
    expect(refusalOf(whenAt(warm, 2, fill as Given))).toEqual(refused)
    const stocked = given()
    for (const type of ['changePan', 'topUp'])
      expect(refusalOf(whenAt(stocked, 2, { ...load('slaw'), type } as Given))).toEqual(refused)
  })

  it('[F60] is refused where its batch is too old', () => {
    const old = at(
      openedService(),
      1,
      { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 1, startedAt: minute(-60) },
      { type: 'finishBatch', batch: 'b1', amount: slaw, preparedOn: '2026-11-19' },
    )
    const dayAfter = 20 * 60
    expect(codeOf(whenAt(old, dayAfter, load('slaw')))).toBe('no-batch')
  })

  it('[F60] out of a batch of today it goes in', () => {
    const told = at(openedService(), 1, ...madeBefore('b1', 'slaw'))
    const full = at(told, 2, load('slaw', { batch: 'b1' }))
    expect(full.state.pans['pan-slaw']).toMatchObject({ amount: slaw, batches: ['b1'] })
  })

  it('[F61] bought in, it says that it is straight from the pack and when that was opened', () => {
    const open = openedService()
    const not = { code: 'not-said-bought', component: 'cheddar' }
    const day = { preparedOn: '2026-11-23' }
    expect(refusalOf(whenAt(open, 1, load('cheddar')))).toEqual({ ...not, lacks: 'bought' })
    expect(refusalOf(whenAt(open, 1, load('cheddar', day)))).toEqual({ ...not, lacks: 'bought' })
    expect(refusalOf(whenAt(open, 1, load('cheddar', { bought: true })))).toEqual({
      ...not,
      lacks: 'opened-on',
    })
    const full = at(open, 1, load('cheddar', { bought: true, ...day }))
    expect(full.state.pans['pan-cheddar']?.food).toMatchObject({
      dateMark: { lastDay: '2026-11-29' },
    })
    expect(full.events.at(-1)).toMatchObject({ type: 'panLoaded', bought: true, batch: null })
    // Its batch is what it says, where it was grated here.
    const warm = readWarm('cheddar')
    expect(codeOf(whenAt(warm, 2, load('cheddar')))).toBe('not-said-bought')
    const past = load('cheddar', { bought: true, preparedOn: '2026-11-18' })
    expect(refusalOf(whenAt(open, 1, past))).toMatchObject({ problem: { code: 'past-date-mark' } })
  })

  it('[F61] what is made here is what the document doesn’t call ready, or has a recipe for', () => {
    const made = demoStation.components.filter(needsBatch).map(({ id }) => id)
    expect(made).toEqual(['rice', 'chicken', 'beans', 'peppers', 'tuna', 'slaw', 'yogurt-sauce'])
    const [tuna] = demoStation.components.filter(({ id }) => id === 'tuna')
    if (!tuna) throw new Error('no tuna')
    const ready = { ...tuna.food, kind: 'ready' } as const
    expect(needsBatch({ ...tuna, food: ready })).toBe(true)
    expect(needsBatch({ ...tuna, food: ready, recipes: [] })).toBe(false)
    expect(needsBatch({ ...tuna, food: { ...tuna.food, kind: null }, recipes: [] })).toBe(true)
  })

  it('[F61] the lead is offered what may go in, and told what to do', () => {
    const state = running(openedService())
    const kinds = (component: string) =>
      putSources(state, { component, id: `pan-${component}` }, state.at).map(({ kind }) => kind)
    expect(kinds('slaw')).toEqual([])
    expect(kinds('cheddar')).toEqual(['plain'])
    const name = (id: string) => id
    expect(sayRefusal({ code: 'no-batch', component: 'slaw' }, name)).toMatch(/finish its batch/)
    const lacks = ['bought', 'opened-on'] as const
    const said = lacks.map((one) =>
      sayRefusal({ code: 'not-said-bought', component: 'cheddar', lacks: one }, name),
    )
    expect(said[0]).toMatch(/its batch, or that it is straight from the pack/)
    expect(said[1]).toMatch(/which day the pack/)
  })
})
