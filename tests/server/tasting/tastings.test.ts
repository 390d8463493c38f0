import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, test } from 'vitest'
import { DAY_MS } from '#lib/access/believed-time.ts'
import type { ReadTasting, TastingCommand } from '#lib/tasting/command.ts'
import { tastingApart } from '#lib/tasting/stream.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'
import { forgetTastings } from '#server/privacy/tasting-needs.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { createTastingStore } from '#server/tasting/sqlite.ts'
import { createTastings, type Tastings } from '#server/tasting/tastings.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'
import { readSources } from '#tests/support/source-tree.ts'
import { DAWN, keeps, NONE, PLAN, TASTING_STATION, TUNA_CARD } from '#tests/support/tasting.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const room = () => {
  const path = join(temporaryFolder(), 'house.db')
  const database = openHouseDatabase({ path })
  const guests = createMemoryGuests()
  let station = TASTING_STATION
  let ofServices: readonly YieldSaved[] = []
  const store = createTastingStore(database)
  const tastings = createTastings({
    store,
    guests,
    station: (id) => (id === station.id ? station : null),
    measured: () => ofServices,
    now: () => DAWN,
  })
  const setCard = (card: object) => {
    station = {
      ...station,
      recipes: station.recipes.map((one) => (one.id === 'tuna-mix' ? { ...one, ...card } : one)),
    }
  }
  const setOfServices = (all: readonly YieldSaved[]) => {
    ofServices = all
  }
  return {
    ...{ path, database, guests, store, tastings, setCard, setOfServices },
    station: () => station,
  }
}

let at: ReturnType<typeof room>
let tastings: Tastings

beforeEach(() => {
  at = room()
  tastings = at.tastings
})

let number = 0
const submit = (command: TastingCommand, id?: string) => {
  number += 1
  return tastings.submit(id ?? `c${number}`, command)
}
const ask = (taster: number, told = NONE): TastingCommand => ({
  type: 'askTaster',
  tasting: 't1',
  taster,
  ...told,
})
const end = (typed: string, saved = true): TastingCommand => ({
  type: 'endTasting',
  tasting: 't1',
  initials: 'KT',
  yields: [{ component: 'tuna', typed, saved }],
})
const read: ReadTasting = {
  ...{ type: 'readTasting', tasting: 't1', component: 'beans', tenths: 1371, scale: 'F' },
  ...{ probe: 'probe 1', where: 'middle-stirred', initials: 'ZQ' },
}
const made = async (id: string) => {
  await submit({ type: 'makeTasting', tasting: id })
  await submit({ ...read, tasting: id })
  await submit({ type: 'readyToTaste', tasting: id })
}
const tasted = async (typed: string, id = 't1') => {
  await submit(PLAN, id)
  for (const taster of [1, 2]) await submit({ type: 'askTaster', tasting: id, taster, ...NONE })
  await made(id)
  return submit({ ...end(typed), tasting: id } as TastingCommand)
}
const accepted = { answer: 'accepted', tasting: 't1' }

describe('a tasting', () => {
  test('[TB9] sent again has one effect; the same id with something else is refused', async () => {
    expect(await submit(PLAN, 't1')).toEqual(accepted)
    expect(await submit(PLAN, 't1')).toEqual(accepted)
    expect(await tastings.of(PLAN.station)).toHaveLength(1)
    expect(await submit({ ...PLAN, portions: 4 }, 't1')).toEqual({
      answer: 'refused',
      refusal: { code: 'id-used-for-something-else' },
    })
    await submit(ask(1), 'ask')
    expect(await submit(ask(1), 'ask')).toEqual(accepted)
    expect(await at.guests.counts()).toMatchObject([{ kind: 'needs', count: 1 }])
  })

  test('[TB9] two that arrive together are taken one after the other', async () => {
    await submit(PLAN, 't1')
    await Promise.all([submit(ask(1)), submit(ask(2))])
    const make: TastingCommand = { type: 'makeTasting', tasting: 't1' }
    const answers = await Promise.all([submit(make, 'm1'), submit(make, 'm2')])
    expect(answers).toEqual([accepted, { answer: 'refused', refusal: { code: 'already-so' } }])
  })

  test('[TB9] of a station that isn’t there, and of a tasting that isn’t', async () => {
    expect(await submit({ ...PLAN, station: 'nowhere' })).toBeNull()
    expect(await submit(ask(1))).toEqual({
      answer: 'refused',
      refusal: { code: 'no-such-tasting' },
    })
  })

  test('[TB8] what a taster keeps from lies in the second file alone, and goes at the end', async () => {
    await submit(PLAN, 't1')
    await submit(ask(1, keeps('tree-nuts')))
    await submit(ask(1, keeps('sesame')))
    await submit(ask(2, keeps('molluscs', 'leave-out')))
    const [told] = await tastings.of(PLAN.station)
    expect(told?.told).toMatchObject({ 1: keeps('sesame'), 2: keeps('molluscs', 'leave-out') })
    // The answer that was taken back is gone too.
    expect(Object.values(await at.guests.of(tastingApart('t1'), 'needs'))).toHaveLength(2)
    at.database.pragma('wal_checkpoint(TRUNCATE)')
    const bytes = readFileSync(at.path).toString('latin1')
    for (const word of ['tree-nuts', 'sesame', 'molluscs', 'keep-apart', 'leave-out', 'KT'])
      expect([word, bytes.includes(word)]).toEqual([word, false])
    await submit({ type: 'dropTasting', tasting: 't1' })
    expect(await at.guests.of(tastingApart('t1'), 'needs')).toEqual({})
  })

  test('[TB8] of one that nobody ended they go a day after it was to, and then all are asked anew', async () => {
    await submit(PLAN, 't1')
    await submit(ask(1))
    await submit(ask(2))
    const [one] = await tastings.of(PLAN.station)
    const ends = one?.tasting.endsAt ?? 0
    const sweep = (believed: number) =>
      forgetTastings(at, { believed, last: { wall: believed, ran: 0, starts: 1 }, other: null }, 30)
    await sweep(ends + DAY_MS)
    expect(Object.keys((await tastings.of(PLAN.station))[0]?.told ?? {})).toEqual(['1', '2'])
    await sweep(ends + DAY_MS + 1)
    expect((await tastings.of(PLAN.station))[0]?.told).toEqual({})
    expect(await submit({ type: 'makeTasting', tasting: 't1' })).toEqual({
      answer: 'refused',
      refusal: { code: 'not-asked', tasters: [1, 2] },
    })
  })

  test('[TB11] initials lie apart, and go after as many days as those of a service', async () => {
    await tasted('6 1/2 oz')
    const held = () => at.guests.of(tastingApart('t1'), 'initials')
    expect(Object.values(await held())).toEqual(['ZQ', 'KT'])
    const sweep = (believed: number) =>
      forgetTastings(at, { believed, last: { wall: believed, ran: 0, starts: 1 }, other: null }, 30)
    await sweep(DAWN + 10 * DAY_MS)
    expect(Object.values(await held())).toEqual(['ZQ', 'KT'])
    await sweep(DAWN + 40 * DAY_MS)
    expect(await held()).toEqual({})
  })
})

test('[TB13] a reading lies with its tasting, and its initials apart', async () => {
  await submit(PLAN, 't1')
  for (const taster of [1, 2]) await submit(ask(taster))
  await submit({ type: 'makeTasting', tasting: 't1' })
  const { initials: _, ...unsigned } = read
  expect(await submit(unsigned as TastingCommand)).toMatchObject({ answer: 'refused' })
  expect(await submit(read)).toEqual(accepted)
  const [one] = await tastings.of(PLAN.station)
  expect(one?.tasting.readings).toMatchObject([{ temperature: { tenths: 1371 }, at: DAWN }])
  expect(JSON.stringify(one)).not.toContain('ZQ')
  expect(Object.values(await at.guests.of(tastingApart('t1'), 'initials'))).toEqual(['ZQ'])
})

describe('the yields that are saved', () => {
  test('[RC55] correct the card that they were measured of, until it is changed', async () => {
    expect(await tasted('6 1/2 oz')).toEqual(accepted)
    expect(tastings.corrected(at.station()).tuna?.ratio).toBeCloseTo(0.8989, 3)
    await tasted('7 oz', 't2')
    expect(tastings.corrected(at.station()).tuna).toMatchObject({ batches: 2 })
    at.setCard({ yields: '2 qt' })
    expect(tastings.corrected(at.station())).toEqual({})
    at.setCard(TUNA_CARD)
    expect(tastings.corrected(at.station()).tuna).toMatchObject({ batches: 2 })
  })

  test('[TB11] one that isn’t saved corrects nothing', async () => {
    await submit(PLAN, 't1')
    await submit(ask(1))
    await submit(ask(2))
    await made('t1')
    expect(await submit(end('6 1/2 oz', false))).toEqual(accepted)
    expect(tastings.yields(PLAN.station)).toEqual([])
  })

  test('[TB11] they say the day, how much of the card it was, and what was typed', async () => {
    await tasted('6 1/2 oz')
    expect(tastings.yields(PLAN.station)).toMatchObject([
      { component: 'tuna', on: PLAN.on, from: 'tasting', factor: 0.1, typed: '6 1/2 oz' },
    ])
  })
})

test('[RC56] batches of services count beside those of tastings', async () => {
  await tasted('6 1/2 oz')
  const [own] = tastings.yields(PLAN.station)
  if (!own) throw new Error('no yield')
  at.setOfServices([
    { ...own, id: 'service/s/0', from: 'service', ratio: 0.8, factor: null, typed: null },
  ])
  expect(tastings.corrected(at.station()).tuna).toMatchObject({ batches: 2 })
  expect(tastings.corrected(at.station()).tuna?.ratio).toBeCloseTo((0.8 + 0.8989) / 2, 3)
})

test('[TB1] nothing of a tasting reaches a service, its commands, the larder or the log', () => {
  const below = ['lib/tasting/', 'server/tasting/']
  const own = readSources(['lib', 'server']).filter(({ path }) =>
    below.some((folder) => path.startsWith(folder)),
  )
  expect(own.length).toBeGreaterThan(8)
  /** A hash of what is said, and the second file, are all that it shares with a service. */
  const allowed = ['lib/service/state-hash.ts', 'server/guests/port.ts']
  const wrong = own.flatMap(({ path, imports }) =>
    imports.flatMap(({ file }) =>
      file !== null &&
      !allowed.includes(file) &&
      /^(lib\/(service|larder|rooms|spine|prep|estimate|protocol|sync)|server\/(?!tasting|store))\//.test(
        file,
      )
        ? [`${path} imports ${file}`]
        : [],
    ),
  )
  expect(wrong).toEqual([])
})
