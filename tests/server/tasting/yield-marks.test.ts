import { join } from 'node:path'
import { beforeEach, expect, test } from 'vitest'
import { DAY_MS } from '#lib/access/believed-time.ts'
import { yieldsApart } from '#lib/tasting/stream.ts'
import type { MarkYield } from '#lib/tasting/yield-marks.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'
import { forgetTastings } from '#server/privacy/tasting-needs.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { createTastingStore } from '#server/tasting/sqlite.ts'
import { createTastings, type Tastings } from '#server/tasting/tastings.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'
import { DAWN, PLAN, TASTING_STATION } from '#tests/support/tasting.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const { station } = PLAN
const APART = yieldsApart(station)
let guests: ReturnType<typeof createMemoryGuests>
let tastings: Tastings
let measured: readonly YieldSaved[]
let now: number

const room = () => {
  guests = createMemoryGuests()
  const database = openHouseDatabase({ path: join(temporaryFolder(), 'house.db') })
  tastings = createTastings({
    store: createTastingStore(database),
    ...{ guests, measured: () => measured, now: () => now },
    station: (id) => (id === station ? TASTING_STATION : null),
  })
  return database
}

beforeEach(() => {
  now = DAWN
  measured = []
  room()
})

let number = 0
const submit = (command: object, id?: string) => {
  number += 1
  return tastings.submit(id ?? `c${number}`, command as never)
}

/** One of tuna salad alone, weighed and saved. */
const tasted = async (id: string, typed: string): Promise<string> => {
  await submit({ ...PLAN, tasters: 1, components: ['tuna'] }, id)
  await submit({ type: 'askTaster', tasting: id, taster: 1, asked: 'none', needs: [] })
  await submit({ type: 'makeTasting', tasting: id })
  await submit({ type: 'readyToTaste', tasting: id })
  const yields = [{ component: 'tuna', typed, saved: true }]
  await submit({ type: 'endTasting', tasting: id, initials: 'KT', yields })
  return tastings.yields(station).find((one) => one.id.includes(id))?.id ?? ''
}
const mark = (yields: string, isOut: boolean, more: Partial<MarkYield> = {}, id?: string) => {
  number += 1
  return tastings.mark(id ?? `m${number}`, { station, yields, isOut, initials: 'ZQ', ...more })
}
const corrected = () => tastings.corrected(TASTING_STATION).tuna
const refused = (refusal: string) => ({ answer: 'refused', refusal })

test('[TB14] a saved yield is taken out again, its row stays, and it can be counted after all', async () => {
  const wrong = await tasted('t1', '3 oz')
  await tasted('t2', '6 1/2 oz')
  expect(corrected()?.batches).toBe(2)
  now += 60_000
  expect(await mark(wrong, true, {}, 'out')).toEqual({ answer: 'accepted' })
  expect(corrected()).toMatchObject({ batches: 1 })
  expect(corrected()?.ratio).toBeCloseTo(0.8989, 3)
  const { yields, initials } = await tastings.yieldsTold(station)
  expect(yields).toMatchObject([
    { id: wrong, typed: '3 oz', out: { at: now, by: 'out' } },
    { typed: '6 1/2 oz', out: null },
  ])
  expect(initials).toEqual({ out: 'ZQ' })
  expect(await mark(wrong, false)).toEqual({ answer: 'accepted' })
  expect(corrected()?.batches).toBe(2)
  expect((await tastings.yieldsTold(station)).initials).toEqual({})
})

test('[TB14] so is a batch of a service, by the same mark', async () => {
  const tuna = await tasted('t1', '6 1/2 oz')
  const [own] = tastings.yields(station)
  if (!own) throw new Error('no yield')
  measured = [{ ...own, id: 'service/s/0', from: 'service', ratio: 0.5 }]
  expect(corrected()?.batches).toBe(2)
  await mark('service/s/0', true)
  expect(corrected()).toMatchObject({ batches: 1, ratio: own.ratio })
  await mark(tuna, true)
  expect(corrected()).toBeUndefined()
})

test('[TB14] nobody takes out what isn’t there, twice, or without initials', async () => {
  const tuna = await tasted('t1', '6 1/2 oz')
  expect(await mark('tasting/t9/tuna', true)).toEqual(refused('no-such-yield'))
  expect(await mark(tuna, false)).toEqual(refused('already-so'))
  expect(await mark(tuna, true, { initials: ' ' })).toEqual(refused('no-initials'))
  expect(await mark(tuna, true, { station: 'nowhere' })).toBeNull()
  expect(corrected()?.batches).toBe(1)
  expect(await guests.of(APART, 'initials')).toEqual({})
})

test('[TB14] sent again it has one effect, and two that arrive together are told apart', async () => {
  const tuna = await tasted('t1', '6 1/2 oz')
  expect(await mark(tuna, true, {}, 'm')).toEqual({ answer: 'accepted' })
  expect(await mark(tuna, true, {}, 'm')).toEqual({ answer: 'accepted' })
  expect(await mark(tuna, false, {}, 'm')).toEqual(refused('id-used-for-something-else'))
  expect(await Promise.all([mark(tuna, false), mark(tuna, false)])).toEqual([
    { answer: 'accepted' },
    refused('already-so'),
  ])
})

test('[TB15] whose initials those were lies apart, and goes after retention; the mark stays', async () => {
  const tuna = await tasted('t1', '6 1/2 oz')
  // Long after the tasting, and some that no mark came of.
  now = DAWN + 100 * DAY_MS
  await mark(tuna, true, {}, 'out')
  await guests.put(APART, 'lost', [{ kind: 'initials', body: 'XY' }])
  const sweep = (believed: number) =>
    forgetTastings(
      { tastings, guests },
      { believed, last: { wall: believed, ran: 0, starts: 1 }, other: null },
      30,
    )
  await sweep(now + 10 * DAY_MS)
  expect(await guests.of(APART, 'initials')).toEqual({ out: 'ZQ' })
  await sweep(now + 40 * DAY_MS)
  expect(await guests.of(APART, 'initials')).toEqual({})
  expect((await tastings.yieldsTold(station)).yields).toMatchObject([
    { id: tuna, out: { at: now, by: 'out' } },
  ])
  expect(corrected()).toBeUndefined()
})
