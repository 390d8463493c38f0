import { pino } from 'pino'
import { describe, expect, onTestFinished, test } from 'vitest'
import type { Rows } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'
import { type Label, UNREAD_LABEL } from '#lib/station/label.ts'
import { openMenu } from '#server/drafts/open-menu.ts'
import { openHouse } from '#server/houses/open-house.ts'
import { createServerClock } from '#server/rail/clock.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const NO_MILK: Label = {
  ...UNREAD_LABEL,
  declarations: { milk: 'free' },
  traits: [],
  readOn: '2026-11-28',
}

/** A house with nothing in it but a station that is begun from nothing. */
const begun = async () => {
  const clock = createServerClock()
  const house = await openHouse({
    path: temporaryFolder(),
    clock,
    logger: pino({ level: 'silent' }),
    fatal: (error) => {
      throw error
    },
  })
  onTestFinished(async () => {
    await house.finish()
    house.quiet()
    await house.closeStores()
  })
  const menu = openMenu({ ...house, now: clock.now })
  const answer = menu.begin({ from: 'nothing', name: 'Lunch' })
  if (answer.code !== 'done') throw new Error(answer.code)
  const draft = (station = 'lunch') => {
    const told = menu.draft(station, null)
    if (told.code !== 'done') throw new Error(told.code)
    return { ...told, rows: told.rows as Rows }
  }
  const save = (...steps: readonly Step[]) =>
    menu.save({ station: 'lunch', saw: draft().saw, steps })
  const read = (ingredient: string, product: string | null = null) =>
    house.labels.change({
      ...{ ingredient, product, saw: 0, label: NO_MILK, same: true, at: 1, adult: null },
    })
  return { menu, draft, save, read }
}

const put = (id: string, fields: Extract<Step, { do: 'put' }>['fields']): Step => ({
  do: 'put',
  entity: 'ingredient',
  id,
  fields,
})

describe('a label that was read', () => {
  test('[ED17] counts for nothing that is typed anew after its ingredient was taken out', async () => {
    const { save, read, draft } = await begun()
    save(put('cheese', { name: 'Cheese' }))
    await read('cheese')
    expect(draft().idsOfBefore).toEqual([])
    expect(save({ do: 'remove', entity: 'ingredient', id: 'cheese' }).code).toBe('done')
    expect(draft().idsOfBefore).toEqual(['cheese'])
    expect(save(put('cheese', { name: 'Cheese' }))).toEqual({
      code: 'step-refused',
      step: 0,
      why: 'id-of-before',
    })
    expect(save(put('cheese-2', { name: 'Cheese' })).code).toBe('done')
    expect(draft().labels['cheese-2']).toBeUndefined()
  })

  test('[ED17] counts for no other maker, and no product that is called as one was', async () => {
    const { save, read, draft } = await begun()
    const oat = { id: 'product-1', maker: 'Oat Row' }
    save(put('cheese', { name: 'Cheese', maker: 'Nut Hollow', products: [oat] }))
    await read('cheese')
    await read('cheese', 'product-1')
    const other = { code: 'step-refused', step: 0, why: 'other-pack' }
    expect(save(put('cheese', { maker: 'Dairy Lane' }))).toEqual(other)
    expect(save({ ...put('cheese', {}), clear: ['maker'] } as Step)).toEqual(other)
    expect(save(put('cheese', { products: [{ ...oat, maker: 'Dairy Lane' }] }))).toEqual(other)
    expect(save(put('cheese', { maker: 'Nut Hollow', pack: '2 kg' })).code).toBe('done')
    expect(save(put('cheese', { products: [] })).code).toBe('done')
    expect(save(put('cheese', { products: [oat] }))).toMatchObject({ why: 'id-of-before' })
    expect(draft().rows['ingredient:cheese']).toMatchObject({ maker: 'Nut Hollow', products: [] })
  })

  test('[ED17] counts for no other food of a set that has the same id', async () => {
    const { menu, save, read, draft } = await begun()
    const begin = (name: string) => menu.begin({ from: 'breakfast', name })
    begin('Looked at')
    const [key] = Object.entries(draft('looked-at').rows).find(
      ([one, row]) => one.startsWith('ingredient:') && row !== undefined && 'at' in row,
    ) ?? ['']
    const id = key.slice('ingredient:'.length)
    const house = await begun()
    house.save(put(id, { name: 'Something else altogether' }))
    await house.read(id)
    house.menu.begin({ from: 'breakfast', name: 'Morning' })
    const { rows, labels } = house.draft('morning')
    const listed = Object.entries(rows).filter(
      ([one, row]) => one.startsWith('ingredient:') && row !== undefined && 'at' in row,
    )
    expect(listed.map(([one]) => one)).not.toContain(`ingredient:${id}`)
    const own = listed.filter(
      ([, row]) => row?.name === draft('looked-at').rows[`ingredient:${id}`]?.name,
    )
    expect(own).toHaveLength(1)
    expect(labels[own[0]?.[0].slice('ingredient:'.length) ?? '']).toBeUndefined()
    // What is called the same is the same food, and shared.
    save(put('anything', { name: 'Anything' }))
    await read('anything')
    expect(begin('Again').code).toBe('done')
    expect(draft('again').rows[`ingredient:${id}`]).toMatchObject({ at: expect.any(Number) })
  })
})

describe('a copy', () => {
  test('[ED4] of a line says of nothing that it doesn’t touch until somebody here does', async () => {
    const { menu, draft } = await begun()
    menu.begin({ from: 'demo', name: 'Wraps' })
    const { rows, missing } = draft('wraps')
    expect(rows.house?.contactsSaid).toBeUndefined()
    expect(Object.values(rows).filter((row) => row?.touches === false)).toEqual([])
    expect(missing.keepApart.map(({ code }) => code)).toContain('contacts-unsaid')
  })
})
