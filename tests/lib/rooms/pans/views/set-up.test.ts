import { describe, expect, test } from 'vitest'
import { sourceKey } from '#lib/rooms/pans/views/put-sources.ts'
import { nextAsked, type SetUpSheet, setUpSheet } from '#lib/rooms/pans/views/set-up.ts'
import { AS_USUAL, NOT_SAID, type SetUpEntry } from '#lib/rooms/pans/views/set-up-row.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { at, MINUTE, madeBefore, read } from '#tests/support/food.ts'
import {
  codeOf,
  cookedService,
  demoStation,
  eventsOf,
  type Given,
  happening,
  NOTHING,
  ofPortions,
  onward,
  openedService,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'
import { stationWithSpares } from '#tests/support/spare-station.ts'

const HOT = ['pan-rice', 'pan-chicken', 'pan-beans', 'pan-peppers']
const COLD = ['pan-tuna', 'pan-slaw', 'pan-cheddar', 'pan-yogurt-sauce']
const YESTERDAY = '2026-11-24'
const TODAY = '2026-11-25'

type Said = Readonly<Record<string, Partial<SetUpEntry>>>

const sheetOf = (told: Told, said: Said = {}, minutes = 0): SetUpSheet => {
  const state = running(told)
  const now = state.at + minutes * MINUTE
  const entryOf = (pan: string): SetUpEntry => ({ ...AS_USUAL, ...said[pan] })
  // Where a test doesn't tell, it was said of what is proposed.
  const { rows } = setUpSheet(state, entryOf, now)
  const sourceOf = new Map(rows.map(({ pan, source }) => [pan, source && sourceKey(source)]))
  return setUpSheet(
    state,
    (pan) => ({ ...AS_USUAL, saidOf: sourceOf.get(pan) ?? null, ...said[pan] }),
    now,
  )
}

/** A reading of the pan, taken so many minutes after the opening. */
const readAt = (told: Told, degrees: number, minutes = 0): Partial<SetUpEntry> => ({
  reading: { ...read(degrees).reading, at: running(told).at + minutes * MINUTE },
  initials: 'KT',
})
const allRead = (told: Told): Said => ({
  ...Object.fromEntries(HOT.map((pan) => [pan, readAt(told, 150)])),
  ...Object.fromEntries(COLD.map((pan) => [pan, readAt(told, 38)])),
})
const rowIn = (sheet: SetUpSheet, pan: string) => {
  const row = sheet.rows.find((one) => one.pan === pan)
  if (!row) throw new Error(`no ${pan}`)
  return row
}
const whyIn = (sheet: SetUpSheet, pan: string) => rowIn(sheet, pan).wait?.why ?? null

describe('the whole line set up at once', () => {
  test('[P60] every pan is proposed as usual in line order, and what it waits for is named', () => {
    const nothing = sheetOf(openedService())
    expect(nothing.rows.map(({ pan }) => pan)).toEqual(
      demoStation.line.wells.flatMap((well) => well.pans.map(({ id }) => id)),
    )
    expect(nothing.loads.map(({ pan }) => pan)).toEqual(['pan-pita', 'pan-almonds'])
    expect(nothing.waiting.map(({ pan, wait }) => [pan, wait?.why])).toEqual([
      ['pan-rice', 'no-batch'],
      ['pan-chicken', 'no-batch'],
      ['pan-beans', 'no-batch'],
      ['pan-peppers', 'no-batch'],
      ['pan-tuna', 'no-batch'],
      ['pan-slaw', 'no-batch'],
      ['pan-cheddar', 'opened-on'],
      ['pan-yogurt-sauce', 'no-batch'],
    ])
    const cooked = sheetOf(cookedService())
    expect(rowIn(cooked, 'pan-rice')).toMatchObject({
      source: { kind: 'batch', id: 'opening-rice' },
      portions: 24,
      wait: { why: 'reading' },
    })
    const begun = at(openedService(), 1, { type: 'startBatch', component: 'beans', loads: 1 })
    expect(rowIn(sheetOf(begun), 'pan-beans').wait).toEqual({ why: 'no-batch', isMaking: true })
    expect(setUpWords.shortly({ why: 'no-batch', isMaking: false }, true)).toBe('cups not filled')
  })

  test('[P60] a pan that somebody leaves empty stays so, and one that holds something is as it is', () => {
    const told = cookedService()
    const left = sheetOf(told, { 'pan-pita': { isLeft: true } })
    expect(whyIn(left, 'pan-pita')).toBe('left')
    expect(left.loads.map(({ pan }) => pan)).toEqual(['pan-almonds'])
    const some = at(told, 1, { type: 'load', pan: 'pan-pita', amount: ofPortions('pita', 7) })
    expect(rowIn(sheetOf(some), 'pan-pita')).toMatchObject({ holds: 7, wait: null, load: null })
  })

  test('[P61] a pot’s reading isn’t the pan’s: it is shown, and the pan is read', () => {
    const told = at(cookedService(), 2, {
      type: 'readTemperature',
      what: 'batch',
      id: 'opening-beans',
      ...read(158),
    })
    const row = rowIn(sheetOf(told), 'pan-beans')
    expect(row.pot).toMatchObject({ temperature: { tenths: 1580 }, at: running(told).at })
    expect(row).toMatchObject({ wait: { why: 'reading' }, load: null })
    expect(setUpWords.pot('158 °F', sayTime(row.pot?.at ?? 0, demoStation.timeZone))).toMatch(
      /^Pot read 158 °F at .+\. Read the pan now\.$/,
    )
  })

  test('[P61] a reading is sent with the moment at which it was taken, and asked again once that is long ago', () => {
    const told = cookedService()
    const said = { 'pan-rice': readAt(told, 150) }
    const soon = rowIn(sheetOf(told, said, 15), 'pan-rice')
    expect(soon.load).toMatchObject({
      amount: ofPortions('rice', 24),
      batch: 'opening-rice',
      reading: { tenths: 1500, at: running(told).at },
    })
    const late = sheetOf(told, said, 16)
    expect(rowIn(late, 'pan-rice').wait).toEqual({
      why: 'read-again',
      at: running(told).at,
    })
    expect(late.loads.map(({ pan }) => pan)).not.toContain('pan-rice')
    const before = { 'pan-rice': readAt(told, 150, -16) }
    expect(whyIn(sheetOf(told, before), 'pan-rice')).toBe('read-again')
  })

  test('[P61] what is out of its limits waits, and the rest goes', () => {
    const told = cookedService()
    const said = {
      ...allRead(told),
      'pan-beans': readAt(told, 128),
      'pan-cheddar': { ...readAt(told, 38), dates: { preparedOn: TODAY } },
    }
    const sheet = sheetOf(told, said)
    expect(sheet.waiting.map(({ pan, wait }) => [pan, wait?.why])).toEqual([
      ['pan-beans', 'out-of-limits'],
    ])
    expect(sheet.loads).toHaveLength(9)
  })

  test('[P61] a reading is of the food that it was taken of: it isn’t told of what is proposed after that', () => {
    const told = onward(
      openedService(),
      ...madeBefore('b1', 'slaw', ofPortions('slaw', 24)),
      ...madeBefore('b2', 'slaw', ofPortions('slaw', 24)),
    )
    const bad = { ...readAt(told, 50), saidOf: 'b1' }
    const [load] = [rowIn(sheetOf(told, { 'pan-slaw': bad }), 'pan-slaw').toTell]
    expect(load).toMatchObject({ batch: 'b1' })
    // b1 is off sale by that reading, and b2 is proposed: nobody read it.
    const refused = when(told, load as Given)
    const after = happening(told, 'also' in refused ? (refused.also ?? []) : [])
    const row = rowIn(sheetOf(after, { 'pan-slaw': bad }), 'pan-slaw')
    expect(row).toMatchObject({ source: { id: 'b2' }, wait: { why: 'reading' }, toTell: null })
    // One in limits, of a batch that was found bad meanwhile, lets no other one in.
    const good = { ...readAt(told, 38), source: 'b1', saidOf: 'b1' }
    expect(rowIn(sheetOf(after, { 'pan-slaw': good }), 'pan-slaw').load).toBeNull()
    const own = { ...good, source: null, saidOf: 'b2' }
    expect(rowIn(sheetOf(after, { 'pan-slaw': own }), 'pan-slaw').load).toMatchObject({
      batch: 'b2',
    })
  })

  test('[P62] packs of two days go into one pan with the earlier, once its label is made anew', () => {
    const told = openedService()
    const cheddar = (over: Partial<SetUpEntry>) =>
      rowIn(sheetOf(told, { 'pan-cheddar': { ...readAt(told, 38), ...over } }), 'pan-cheddar')
    expect(cheddar({}).wait?.why).toBe('opened-on')
    expect(cheddar({ alsoOpened: YESTERDAY }).wait?.why).toBe('opened-on')
    const one = cheddar({ dates: { preparedOn: TODAY } })
    expect(one.load).toMatchObject({ bought: true, preparedOn: TODAY })
    const both = { dates: { preparedOn: TODAY, useBy: '2026-12-01' }, alsoOpened: YESTERDAY }
    expect(cheddar(both)).toMatchObject({
      wait: { why: 'label' },
      openedOn: YESTERDAY,
      load: null,
    })
    expect(cheddar({ ...both, isLabelled: true }).load).toMatchObject({
      preparedOn: YESTERDAY,
      useBy: '2026-12-01',
    })
    expect(cheddar({ ...both, alsoOpened: NOT_SAID, isLabelled: true }).wait?.why).toBe('opened-on')
    // Of one day the label says what it said.
    expect(cheddar({ ...both, alsoOpened: TODAY }).load).toMatchObject({ preparedOn: TODAY })
    const turned = { dates: { preparedOn: YESTERDAY }, alsoOpened: TODAY, isLabelled: true }
    expect(cheddar(turned).load).toMatchObject({ preparedOn: YESTERDAY })
    const old = { dates: { preparedOn: '2026-11-18' } }
    expect(cheddar(old).wait).toEqual({ why: 'past-date', lastDay: '2026-11-24' })
    expect(cheddar({ dates: { preparedOn: '2026-11-26' } }).wait?.why).toBe('date')
  })

  test('[P63] what goes into one pan isn’t there for the next of its food', () => {
    const open: Given = { type: 'open', station: demoStation.id, kind: 'real' }
    const station = () => ({ revision: 1, document: stationWithSpares })
    const told = onward(
      happening(NOTHING, eventsOf(when(NOTHING, open, { station }))),
      ...madeBefore('b1', 'slaw', ofPortions('slaw', 50)),
    )
    const slaw = { ...readAt(told, 38) }
    const both = sheetOf(told, { 'pan-slaw': slaw, 'pan-slaw-spare': slaw })
    expect(rowIn(both, 'pan-slaw').load?.amount).toBe(ofPortions('slaw', 40))
    expect(rowIn(both, 'pan-slaw-spare').load?.amount).toBe(ofPortions('slaw', 10))
    const all = sheetOf(told, {
      'pan-slaw': { ...slaw, portions: 50 },
      'pan-slaw-spare': slaw,
    })
    expect(rowIn(all, 'pan-slaw').load?.amount).toBe(ofPortions('slaw', 50))
    expect(rowIn(all, 'pan-slaw-spare').wait).toEqual({ why: 'no-batch', isMaking: false })
    const left = sheetOf(told, { 'pan-slaw': { isLeft: true }, 'pan-slaw-spare': slaw })
    expect(rowIn(left, 'pan-slaw-spare').load?.amount).toBe(ofPortions('slaw', 20))
  })

  test('[P64] every load of the sheet is accepted, one after the other, by the rules that load one pan', () => {
    const told = cookedService()
    const said = {
      ...allRead(told),
      'pan-cheddar': { ...readAt(told, 38), dates: { preparedOn: TODAY } },
    }
    const { loads, waiting } = sheetOf(told, said)
    expect(waiting).toEqual([])
    expect(loads).toHaveLength(10)
    const done = onward(told, ...(loads as readonly Given[]))
    expect(sheetOf(done).loads).toEqual([])
    expect(Object.values(running(done).pans).every(({ amount }) => amount > 0)).toBe(true)
  })

  test('[P64] what the sheet lets wait would be refused', () => {
    const told = cookedService()
    const reading = readAt(told, 128)
    const sheet = sheetOf(told, { 'pan-beans': reading })
    expect(whyIn(sheet, 'pan-beans')).toBe('out-of-limits')
    // It is told by itself all the same, so that its batch waits for a decision [F90].
    expect(sheet.rows.find(({ pan }) => pan === 'pan-beans')?.toTell).toMatchObject({
      type: 'load',
      batch: 'opening-beans',
    })
    expect(sheet.loads.some(({ pan }) => pan === 'pan-beans')).toBe(false)
    const load: Given = {
      type: 'load',
      pan: 'pan-beans',
      amount: ofPortions('beans', 24),
      batch: 'opening-beans',
      reading: reading.reading ?? undefined,
      initials: 'KT',
    }
    expect(codeOf(when(told, load))).not.toBeNull()
  })

  test('[P60] the next pan is the next that something can be said of, from the beginning again', () => {
    const told = cookedService()
    const sheet = sheetOf(told, { 'pan-rice': readAt(told, 150) })
    expect(nextAsked(sheet, null)).toBe('pan-chicken')
    expect(nextAsked(sheet, 'pan-peppers')).toBe('pan-tuna')
    expect(nextAsked(sheet, 'pan-yogurt-sauce')).toBe('pan-chicken')
    expect(nextAsked(sheetOf(openedService()), 'pan-cheddar')).toBeNull()
  })
})
