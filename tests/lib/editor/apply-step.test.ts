import { describe, expect, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { applyStep, changedKeys } from '#lib/editor/apply-step.ts'
import { type Draft, rowsOf } from '#lib/editor/draft.ts'
import { draftOf } from '#lib/editor/draft-of.ts'
import type { Step } from '#lib/editor/step.ts'
import { stationSchema } from '#lib/station/schema.ts'

const demo = draftOf(JSON.parse(JSON.stringify(stationSchema.parse(alderHall))))

const taken = (step: Step, draft: Draft = demo): Draft => {
  const stepped = applyStep(draft, step)
  if (!stepped.ok) throw new Error(stepped.why)
  return stepped.draft
}

const changed = (step: Step) => changedKeys(demo.rows, taken(step).rows)

const ids = (draft: Draft, well: string) =>
  rowsOf(draft, 'pan')
    .filter(({ row }) => row.well === well)
    .map(({ id }) => id)

describe('a step', () => {
  test('[ED1] puts fields into a row, and what it doesn’t name stays', () => {
    const before = structuredClone(demo)
    const step: Step = {
      do: 'put',
      entity: 'item',
      id: 'garden-chicken',
      fields: { priceCents: 700 },
    }
    expect(changed(step)).toEqual(['item:garden-chicken'])
    expect(taken(step).rows['item:garden-chicken']).toEqual({
      ...demo.rows['item:garden-chicken'],
      priceCents: 700,
    })
    expect(demo).toEqual(before)
  })

  test('[ED1] takes an answer away', () => {
    const step: Step = {
      do: 'put',
      entity: 'component',
      id: 'rice',
      fields: {},
      clear: ['mark'],
    }
    expect(taken(step).rows['component:rice']).not.toHaveProperty('mark')
  })

  test('[ED1] makes what is new at the end of its kind, as strict as can be', () => {
    const made = taken({
      do: 'put',
      entity: 'component',
      id: 'pickled-onions',
      fields: { name: 'Pickled red onions' },
    })
    expect(rowsOf(made, 'component').at(-1)).toMatchObject({
      id: 'pickled-onions',
      row: { short: ['Pickled', 'red onions'], food: { kind: null }, side: false, remake: null },
    })
    expect(made.rows['component:pickled-onions']).not.toHaveProperty('portion')
  })

  test.each<[string, Step, string]>([
    ['no row', { do: 'remove', entity: 'item', id: 'nothing' }, 'no-such-row'],
    ['no field', { do: 'put', entity: 'item', id: 'a', fields: { milk: true } }, 'no-such-field'],
    [
      'no label',
      { do: 'put', entity: 'ingredient', id: 'a', fields: { declarations: {} } },
      'no-such-field',
    ],
    ['no id', { do: 'put', entity: 'item', id: 'Not one', fields: {} }, 'no-id'],
    [
      'an id of every record',
      { do: 'put', entity: 'item', id: 'constructor', fields: {} },
      'no-id',
    ],
    ['another single', { do: 'put', entity: 'house', id: 'day', fields: {} }, 'no-id'],
    [
      'too large',
      { do: 'put', entity: 'item', id: 'a', fields: { name: 'x'.repeat(50_000) } },
      'too-large',
    ],
    [
      'no well',
      { do: 'move', entity: 'pan', id: 'pan-rice', before: null, well: 'attic' },
      'no-such-row',
    ],
    [
      'nobody before',
      { do: 'move', entity: 'item', id: 'garden-chicken', before: 'nobody' },
      'no-such-row',
    ],
  ])('[ED1] with %s is refused', (_, step, why) => {
    expect(applyStep(demo, step)).toMatchObject({ ok: false, why })
  })

  test.each<[string, 'ingredient' | 'recipe' | 'component' | 'well', string, object]>([
    ['ingredient', 'ingredient', 'tuna', { entity: 'recipe', id: 'tuna-mix' }],
    ['recipe', 'recipe', 'tuna-mix', { entity: 'component' }],
    ['component', 'component', 'chicken', { entity: 'item', id: 'garden-chicken' }],
    ['well', 'well', 'hot', { entity: 'pan' }],
  ])('[ED1] removes no %s that is in use, and says by what', (_, entity, id, other) => {
    expect(applyStep(demo, { do: 'remove', entity, id })).toMatchObject({
      ok: false,
      why: 'in-use',
      other,
    })
  })

  test('[ED1] that removes a component takes it out of what touches it, and its tool lies by', () => {
    const alone: Draft = {
      ...demo,
      rows: Object.fromEntries(
        Object.entries(demo.rows).filter(([key]) => !/^(item|pan|backup):/.test(key)),
      ),
    }
    const left = taken({ do: 'remove', entity: 'component', id: 'rice' }, alone)
    expect(JSON.stringify(rowsOf(left, 'contact'))).not.toContain('"rice"')
    expect(rowsOf(left, 'tool').filter(({ row }) => row.usualFor === 'rice')).toEqual([])
    expect(rowsOf(left, 'tool')).toHaveLength(rowsOf(demo, 'tool').length)
  })

  test('[ED1] moves one row in front of another, and a pan into another well', () => {
    const step: Step = {
      do: 'move',
      entity: 'pan',
      id: 'pan-peppers',
      before: 'pan-slaw',
      well: 'cold',
    }
    expect(changed(step)).toEqual(['pan:pan-peppers'])
    expect(ids(taken(step), 'cold')).toEqual(['pan-tuna', 'pan-peppers', 'pan-slaw', 'pan-cheddar'])
    expect(ids(taken(step), 'hot')).toEqual(['pan-chicken', 'pan-beans'])
  })

  test('[ED1] moves between the same two as often as one likes', () => {
    let draft = demo
    for (let times = 0; times < 200; times += 1) {
      const [id = '', before = ''] =
        times % 2 === 0 ? ['pan-beans', 'pan-peppers'] : ['pan-peppers', 'pan-beans']
      draft = taken({ do: 'move', entity: 'pan', id, before }, draft)
      draft = taken({ do: 'move', entity: 'pan', id: 'pan-chicken', before: id }, draft)
      expect(ids(draft, 'hot').toSorted()).toEqual(['pan-beans', 'pan-chicken', 'pan-peppers'])
      expect(ids(draft, 'hot')).toEqual(['pan-chicken', id, before])
    }
  })

  test('[ED1] renames, with the short name where that was proposed from the name', () => {
    const made = taken({ do: 'put', entity: 'component', id: 'a', fields: { name: 'Red onions' } })
    const renamed = taken({ do: 'rename', entity: 'component', id: 'a', name: 'Sweet corn' }, made)
    expect(renamed.rows['component:a']).toMatchObject({
      name: 'Sweet corn',
      short: ['Sweet', 'corn'],
    })
    const own = taken(
      { do: 'put', entity: 'component', id: 'a', fields: { short: ['Onion'] } },
      made,
    )
    const kept = taken({ do: 'rename', entity: 'component', id: 'a', name: 'Sweet corn' }, own)
    expect(kept.rows['component:a']).toMatchObject({ short: ['Onion'] })
  })
})
