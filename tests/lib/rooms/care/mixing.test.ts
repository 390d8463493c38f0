import { describe, expect, it } from 'vitest'
import { declaredBy } from '#lib/needs/declared.ts'
import { ownDocument } from '#lib/rooms/care/facts/mixing.ts'
import type { Label } from '#lib/station/label.ts'
import { labelOf as labelIn } from '#lib/station/label.ts'
import { fahrenheit, madeBefore } from '#tests/support/food.ts'
import {
  at,
  buildIn,
  changePan,
  choose,
  codeOf,
  demoStation,
  type Given,
  load,
  needs,
  ofPortions,
  onward,
  ready,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const labelOf = (ingredient: string): Label => {
  const found = demoStation.ingredients.find((one) => one.id === ingredient)
  if (!found) throw new Error(`no ingredient ${ingredient}`)
  const label = labelIn(found)
  return label
}

/** Sesame oil goes into the slaw; this brand's label declares it free of sesame. */
const free: Label = {
  ...labelOf('sesame-oil'),
  declarations: { ...labelOf('sesame-oil').declarations, sesame: 'free' },
}
const read = (product: 'other' | 'same', label = free): Given => ({
  type: 'changeLabel',
  ingredient: 'sesame-oil',
  label,
  product,
})
const slaw = ({ state }: Told) =>
  state.station ? declaredBy(state.station, 'slaw', 'sesame').state : null
const withSlaw = choose(
  'bean-and-pepper',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', peppers: 'no' },
  needs({ code: 'sesame', handling: 'leave-out', reason: null }),
)
const newSlaw: Given = changePan('pan-slaw', 1_000_000)
const again = { batch: 'b-new', notFirst: true } as const
const newBatch = madeBefore('b-new', 'slaw', 2_000_000)
/** Out of a batch that was made since. */
const newerSlaw: readonly Given[] = [...newBatch, { ...newSlaw, ...again } as Given]
const oldBatch: Given = {
  type: 'throwOut',
  what: 'batch',
  id: 'opening-slaw',
  reason: 'other',
  initials: 'KT',
}
const putAway: Given = { type: 'setBackup', component: 'slaw', ready: false }

describe('another product at the door', () => {
  it('[S90] counts beside what the pans hold, until they are changed', () => {
    const told = ready(read('other'))
    expect(slaw(told)).toBe('contains')
    expect(codeOf(when(told, send(withSlaw)))).toBe('contains')
    expect(told.state.mixing).toEqual({
      'sesame-oil': {
        pans: ['pan-slaw', 'back-up-slaw', 'batch/opening-slaw'],
        before: ['sesame-oil--before'],
      },
    })
    expect(slaw(onward(told, newSlaw))).toBe('contains')
    const changed = onward(told, ...newerSlaw, putAway, oldBatch)
    expect(changed.state.mixing).toEqual({})
    expect(slaw(changed)).toBe('free')
    expect(codeOf(when(changed, send(withSlaw)))).toBeNull()
    expect(running(changed).station).toEqual(ownDocument(running(changed)))
  })

  it('[S90] also in a batch that was made of it: a pan changed out of that holds it still', () => {
    const beans: Given = {
      type: 'changeLabel',
      ingredient: 'black-beans',
      label: labelOf('black-beans'),
      product: 'other',
    }
    const held = (told: Told) => told.state.mixing['black-beans']?.pans
    const told = onward(ready(), beans)
    expect(held(told)).toEqual(['pan-beans', 'back-up-beans', 'batch/opening-beans'])
    const changed = onward(told, changePan('pan-beans', ofPortions('beans', 10)))
    expect(held(changed)).toContain('pan-beans')
    const thrownOut = onward(told, {
      type: 'throwOut',
      what: 'batch',
      id: 'opening-beans',
      reason: 'other',
      initials: 'KT',
    })
    expect(held(thrownOut)).toEqual(['pan-beans', 'back-up-beans'])
  })

  it('[S90] also in a batch that seems used up: it may be counted up again', () => {
    const beans = (count: number) => ofPortions('beans', count)
    const batch = { batch: 'opening-beans', reading: fahrenheit(150), initials: 'KT' } as const
    const finish = (count: number): Given => ({
      type: 'finishBatch',
      batch: 'opening-beans',
      amount: beans(count),
    })
    const change: Given = { type: 'changePan', pan: 'pan-beans', amount: beans(10), ...batch }
    const fresh = ready()
    const used = onward(fresh, {
      ...finish(1),
      amount: fresh.state.batches['opening-beans']?.loaded ?? 0,
    } as Given)
    const other: Given = {
      type: 'changeLabel',
      ingredient: 'black-beans',
      label: labelOf('black-beans'),
      product: 'other',
    }
    const held = (told: Told) => told.state.mixing['black-beans']?.pans
    const told = onward(used, other)
    expect(held(told)).toEqual(['pan-beans', 'back-up-beans', 'batch/opening-beans'])
    const changed = onward(told, finish(400), change)
    expect(new Set(held(changed))).toEqual(
      new Set(['pan-beans', 'back-up-beans', 'batch/opening-beans']),
    )
    const gone: Given = {
      type: 'throwOut',
      what: 'batch',
      id: 'opening-beans',
      reason: 'other',
      initials: 'KT',
    }
    expect(held(onward(told, gone))).toEqual(['pan-beans', 'back-up-beans'])
  })

  it('[S90] or emptied, washed and loaded; empty alone is not enough', () => {
    const empty = ready(read('other'), { type: 'correct', pan: 'pan-slaw', amount: 0 })
    expect(slaw(empty)).toBe('contains')
    const fresh = onward(empty, ...newBatch, putAway, oldBatch)
    const put = (washed?: boolean) =>
      ({ ...load('pan-slaw', 1_000_000, washed), ...again }) as Given
    expect(slaw(onward(fresh, put()))).toBe('contains')
    expect(slaw(onward(fresh, put(true)))).toBe('free')
  })

  it('[S90] keeps what was known to be in the pans while nobody has read the new label', () => {
    const told = ready({ type: 'notSameProduct', ingredient: 'sesame-oil' })
    expect(codeOf(when(told, send(withSlaw)))).toBe('contains')
    const both = onward(told, read('other'))
    expect(slaw(both)).toBe('contains')
    expect(both.state.mixing['sesame-oil']?.before).toEqual(['sesame-oil--before'])
    const third = onward(both, read('other', labelOf('cabbage')))
    expect(third.state.mixing['sesame-oil']?.before).toEqual([
      'sesame-oil--before',
      'sesame-oil--before-2',
    ])
    expect(slaw(onward(third, ...newerSlaw, putAway, oldBatch))).toBe('free')
  })

  it('[S90] is not in the document that the station keeps', () => {
    const told = ready(read('other'))
    const own = ownDocument(running(told))
    expect(own.ingredients.find((one) => one.id === 'sesame-oil')?.declarations.sesame).toBe('free')
    expect(JSON.stringify(own)).not.toContain('--before')
    expect(JSON.stringify(running(told).station)).toContain('--before')
    const before: Given = { ...read('other'), ingredient: 'sesame-oil--before' } as Given
    expect(codeOf(when(told, before, { by: 'in-charge' }))).toBe('unknown ingredient')
  })

  it('[S91] back-up pans of the product before are no longer said to stand ready', () => {
    expect(ready().state.backups.slaw).toBeDefined()
    expect(ready(read('other')).state.backups.slaw).toBeUndefined()
    expect(ready(read('same')).state.backups.slaw).toBeDefined()
    expect(ready(read('other')).state.backups.rice).toBeDefined()
  })

  it('[S153] also once what kept one from being served at that moment is over', () => {
    const warm: Given = {
      type: 'readTemperature',
      what: 'backup',
      id: 'back-up-slaw',
      reading: fahrenheit(52, { cleaned: true }),
      initials: 'KT',
    }
    const good: Given = {
      type: 'resolveOffSale',
      what: 'backup',
      id: 'back-up-slaw',
      way: 'time-only',
    }
    expect(ready(warm).state.backups.slaw).toBeUndefined()
    expect(ready(warm, good).state.backups.slaw).toBeDefined()
    expect(ready(warm, read('other'), good).state.backups.slaw).toBeUndefined()
    expect(ready(warm, read('same'), good).state.backups.slaw).toBeDefined()
  })

  /** The back-up pan holds one portion, which a build that is kept apart took. */
  const usedUp = onward(
    ready(putAway, ...newBatch),
    {
      type: 'setBackup',
      component: 'slaw',
      ready: true,
      amount: ofPortions('slaw', 1),
      reading: fahrenheit(38, { cleaned: true }),
      initials: 'KT',
      ...again,
    },
    send({
      ...withSlaw,
      ...needs({ code: 'milk', handling: 'keep-apart', reason: null }),
      agreed: true,
    }),
    { type: 'start', ...at('1A'), read: true },
    { type: 'finish', ...at('1A') },
  )
  const undone: Given = { type: 'takeBack', ...at('1A'), made: false }

  it('[S123] a used-up back-up pan holds it too: a finish that is taken back brings its food to light', () => {
    expect(buildIn(usedUp, '1A').took).toContainEqual(
      expect.objectContaining({ pan: 'back-up-slaw' }),
    )
    expect(usedUp.state.backupPans['back-up-slaw']?.amount).toBe(0)
    // Nothing came between: it is as it was.
    expect(onward(usedUp, undone).state.backups.slaw).toBeDefined()
    const told = onward(usedUp, read('other'))
    expect(told.state.mixing['sesame-oil']?.pans).toContain('back-up-slaw')
    const back = onward(told, undone)
    expect(back.state.backupPans['back-up-slaw']?.amount).toBe(ofPortions('slaw', 1))
    expect(back.state.backups.slaw).toBeUndefined()
    // The pan and the batches of before are gone, and still it isn't free.
    const others = ['opening-slaw', 'b-new'].map((id) => ({ ...oldBatch, id }) as Given)
    const later = madeBefore('b-later', 'slaw', 2_000_000)
    const changed: Given = { ...newSlaw, batch: 'b-later', notFirst: true } as Given
    expect(slaw(onward(back, ...others, ...later, changed))).toBe('contains')
  })

  it('[S123] until it is filled anew, as a clean one', () => {
    const told = onward(usedUp, read('other'))
    const fill = (batch: string): Given => ({
      type: 'setBackup',
      component: 'slaw',
      ready: true,
      amount: ofPortions('slaw', 2),
      reading: fahrenheit(38, { cleaned: true }),
      initials: 'KT',
      batch,
      notFirst: true,
    })
    const anew = onward(told, ...madeBefore('b-later', 'slaw', 2_000_000), fill('b-later'))
    expect(anew.state.mixing['sesame-oil']?.pans).not.toContain('back-up-slaw')
    expect(anew.state.backups.slaw).toBeDefined()
    // Out of a batch that holds it, it holds it again.
    expect(onward(told, fill('b-new')).state.mixing['sesame-oil']?.pans).toContain('back-up-slaw')
    expect(onward(anew, undone).state.backupPans['back-up-slaw']?.amount).toBe(
      ofPortions('slaw', 2),
    )
  })

  it('[S92] a label of the same product that was read wrong takes its place at once', () => {
    expect(slaw(ready(read('same')))).toBe('free')
    expect(ready(read('same')).state.mixing).toEqual({})
  })

  it('[S92] is dated by the server’s day at the station', () => {
    const told = ready(read('same', { ...free, readOn: null }))
    const oil = running(told).station.ingredients.find((one) => one.id === 'sesame-oil')
    expect(oil?.readOn).toBe('2026-11-25')
  })
})
