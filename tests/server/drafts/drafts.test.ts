import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { draftOf } from '#lib/editor/draft-of.ts'
import type { Step } from '#lib/editor/step.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { createDrafts } from '#server/drafts/drafts.ts'
import { createSqliteDrafts } from '#server/drafts/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const demo = draftOf(JSON.parse(JSON.stringify(stationSchema.parse(alderHall))))
const STATION = demo.station

const open = (path = join(temporaryFolder(), 'house.db')) => {
  const file = openHouseDatabase({ path })
  onTestFinished(() => closeDurableDatabase(file))
  const drafts = createDrafts(createSqliteDrafts(file, 'h-one'))
  return { path, file, drafts, close: () => closeDurableDatabase(file) }
}

/** Of the demo, as two people have seen it. */
const seen = () => {
  const room = open()
  const answer = room.drafts.replace(demo, 0)
  if (answer.code !== 'done') throw new Error(answer.code)
  return { ...room, saw: answer.saw }
}

const item = (fields: Extract<Step, { do: 'put' }>['fields'], id = 'garden-chicken'): Step => ({
  do: 'put',
  entity: 'item',
  id,
  fields,
})

describe('a draft that is kept', () => {
  test('[ED10] is what was saved, row for row, also after a restart', () => {
    const { path, drafts, saw, close } = seen()
    expect(drafts.now(STATION)).toEqual({ draft: demo, saw })
    drafts.save(STATION, saw, [item({ priceCents: 725 })])
    const before = drafts.now(STATION)
    close()
    expect(open(path).drafts.now(STATION)).toEqual(before)
  })

  test('[ED10] merges what two people change in different rows, and each is told of the other’s', () => {
    const { drafts, saw } = seen()
    const first = drafts.save(STATION, saw, [item({ priceCents: 700 })])
    const second = drafts.save(STATION, saw, [item({ priceCents: 800 }, 'bean-and-pepper')])
    expect(first).toMatchObject({ code: 'done', saw: saw + 1 })
    expect(second).toMatchObject({ code: 'done', saw: saw + 2 })
    if (second.code !== 'done') return
    expect(Object.keys(second.rows).toSorted()).toEqual([
      'item:bean-and-pepper',
      'item:garden-chicken',
    ])
    expect(drafts.now(STATION).draft.rows['item:garden-chicken']).toMatchObject({ priceCents: 700 })
  })

  test('[ED10] is stale where both change one row: nothing is written over, all is told', () => {
    const { drafts, saw } = seen()
    drafts.save(STATION, saw, [item({ priceCents: 700 })])
    const late = drafts.save(STATION, saw, [
      item({ priceCents: 800 }, 'bean-and-pepper'),
      item({ name: 'Garden wrap' }),
    ])
    expect(late).toMatchObject({
      code: 'stale',
      saw: saw + 1,
      changed: ['item:garden-chicken'],
      rows: { 'item:garden-chicken': { priceCents: 700 } },
    })
    expect(drafts.now(STATION).saw).toBe(saw + 1)
    expect(drafts.now(STATION).draft.rows['item:bean-and-pepper']).toEqual(
      demo.rows['item:bean-and-pepper'],
    )
    if (late.code !== 'stale') return
    expect(drafts.save(STATION, late.saw, [item({ name: 'Garden wrap' })]).code).toBe('done')
    expect(drafts.now(STATION).draft.rows['item:garden-chicken']).toMatchObject({
      name: 'Garden wrap',
      priceCents: 700,
    })
  })

  test('[ED10] takes a save again whose answer was lost, without a second effect', () => {
    const { drafts, saw } = seen()
    const step = item({ priceCents: 700 })
    drafts.save(STATION, saw, [step])
    expect(drafts.save(STATION, saw, [step])).toMatchObject({ code: 'done', saw: saw + 1 })
  })

  test('[ED10] tells that a row was removed, and is stale for who still changes it', () => {
    const { drafts, saw } = seen()
    drafts.save(STATION, saw, [{ do: 'remove', entity: 'item', id: 'garden-chicken' }])
    expect(drafts.since(STATION, saw)).toEqual({ 'item:garden-chicken': null })
    expect(drafts.save(STATION, saw, [item({ priceCents: 1 })])).toMatchObject({
      code: 'stale',
      changed: ['item:garden-chicken'],
    })
  })

  test('[ED10] takes all steps of a save or none', () => {
    const { drafts, saw } = seen()
    const answer = drafts.save(STATION, saw, [
      item({ priceCents: 700 }),
      { do: 'remove', entity: 'ingredient', id: 'tuna' },
    ])
    expect(answer).toEqual({
      code: 'step-refused',
      step: 1,
      why: 'in-use',
      other: { entity: 'recipe', id: 'tuna-mix' },
    })
    expect(drafts.now(STATION)).toEqual({ draft: demo, saw })
  })
})

describe('ingredients', () => {
  test('[ED11] are the house’s: called the same in each station that lists them', () => {
    const { drafts } = seen()
    const soup = { station: 'soup', rows: { house: { name: 'Soup' } } }
    drafts.replace(soup, drafts.now('soup').saw)
    const known = drafts.now('soup').draft.rows['ingredient:tuna']
    expect(known).toMatchObject({ name: expect.any(String) })
    expect(known).not.toHaveProperty('at')
    const { saw } = drafts.now('soup')
    drafts.save('soup', saw, [
      { do: 'put', entity: 'ingredient', id: 'tuna', fields: { name: 'Tuna in water' } },
    ])
    expect(drafts.now(STATION).draft.rows['ingredient:tuna']).toMatchObject({
      name: 'Tuna in water',
    })
    expect(drafts.now('soup').draft.rows['ingredient:tuna']).toHaveProperty('at')
  })

  test('[ED11] stay the house’s while another station has them, and go with the last', () => {
    const { drafts } = seen()
    drafts.replace({ station: 'soup', rows: { house: { name: 'Soup' } } }, drafts.now('soup').saw)
    const put: Step = { do: 'put', entity: 'ingredient', id: 'leek', fields: { name: 'Leek' } }
    const remove: Step = { do: 'remove', entity: 'ingredient', id: 'leek' }
    for (const station of ['soup', STATION]) drafts.save(station, drafts.now(station).saw, [put])
    drafts.save('soup', drafts.now('soup').saw, [remove])
    expect(drafts.now('soup').draft.rows['ingredient:leek']).toEqual({ name: 'Leek' })
    drafts.save(STATION, drafts.now(STATION).saw, [remove])
    expect(drafts.now('soup').draft.rows['ingredient:leek']).toBeUndefined()
  })

  test('[ED11] of another house are of no house but that one', () => {
    const { drafts, file } = seen()
    const other = createDrafts(createSqliteDrafts(file, 'h-two'))
    expect(other.stations()).toEqual([])
    expect(other.now(STATION)).toEqual({ draft: { station: STATION, rows: {} }, saw: 0 })
    expect(drafts.stations()).toEqual([STATION])
  })
})
