import { describe, expect, it } from 'vitest'
import type { LarderRecorded } from '#lib/larder/event.ts'
import type { LotFood } from '#lib/larder/lot.ts'
import type { LabelHistory } from '#lib/larder/relabelled.ts'
import { declaredBy, waysTo } from '#lib/needs/declared.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import { isRunning } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Label } from '#lib/station/label.ts'
import type { LarderLog } from '#server/larder/larder-rail.ts'
import { openRail, type Rail } from '#server/rail/rail.ts'
import { createGatedLog } from '#tests/support/gated-log.ts'
import { coldRice, setAside } from '#tests/support/larder.ts'
import { createLarderRoom } from '#tests/support/larder-room.ts'
import { OPEN, railStation } from '#tests/support/orders.ts'
import { createRailRoom, NOON, settle } from '#tests/support/rail-room.ts'
import { read } from '#tests/support/readings.ts'

const HELD = 5_000_000
const madeOf = [
  ...new Set(
    [...waysTo(railStation, componentOf(railStation, 'rice'))].flatMap((way) => way.at(-1) ?? []),
  ),
].sort()

const food = (more: Partial<LotFood> = {}): LotFood =>
  coldRice({
    from: { service: 's-before', station: railStation.id, what: 'pan', id: 'pan-rice' },
    madeOf,
    dateMark: stampOf('2026-03-05', 'UTC'),
    startedAt: NOON - 7_200_000,
    finishedAt: NOON - 3_600_000,
    readings: [read(39, NOON - 60_000)],
    ...more,
  })

const takes = (amount: number, lot = 'a'): Command => ({ type: 'takeFromLarder', lot, amount })

/** Two stations with a service each, two rails over one log, and the house's larder. */
const room = async (
  lot: Partial<LotFood> = {},
  {
    labels,
    newestLabels = {},
  }: Partial<{ labels: LabelHistory; newestLabels: LabelVersions }> = {},
) => {
  const gated = createGatedLog()
  const log = gated.log.as<LarderRecorded, never>() as unknown as LarderLog
  const larderRoom = await createLarderRoom({
    at: NOON,
    log,
    ...(labels ? { labels } : {}),
  })
  const { larder } = larderRoom
  const { ports } = await createRailRoom({ log: gated.log, larder })
  const open = async (station: string, service: string): Promise<Rail> => {
    const rail = await openRail({
      ...ports,
      service,
      station: (id) => ({
        revision: 1,
        document: { ...railStation, id },
        labels: newestLabels,
      }),
      newestLabels: () => newestLabels,
    })
    await rail.submit(`open-${service}`, { ...OPEN, station } as Command, 'lead')
    return rail
  }
  const one = await open(railStation.id, 's-one')
  const other = await open('birch-hall', 's-two')
  await larderRoom.append(setAside('a', food(lot), HELD))
  return { gated, larder, larderRoom, ports, one, other }
}

const refusalOf = (answer: Answer) => (answer.answer === 'refused' ? answer.refusal : null)

const heldBy = (rail: Rail): number => {
  const state = rail.state()
  return isRunning(state)
    ? Object.values(state.batches).reduce((sum, { amount }) => sum + amount, 0)
    : 0
}

describe('taken from the larder', () => {
  it('[LA30] it is a batch of its component, with what was read of it and its date', async () => {
    const { one, larder } = await room({ soiledBy: ['cheddar'], stoodOpen: true })
    expect(await one.submit('take', takes(2_000_001), 'lead')).toMatchObject({ answer: 'accepted' })
    const state = one.state()
    expect(isRunning(state) && state.batches.b1).toMatchObject({
      component: 'rice',
      amount: 2_000_001,
      loaded: 0,
      dateMark: { lastDay: '2026-03-05' },
      readings: [{ at: NOON - 60_000 }],
      soiledBy: ['cheddar'],
      probedWith: ['cheddar'],
      stoodOpen: true,
      lot: 'a',
    })
    expect((await larder.newest()).lots.a?.amount).toBe(HELD - 2_000_001)
  })

  it('[LA30] of frozen food its date is that of thawing from today on', async () => {
    const frozen = { on: '2026-02-01', daysLeft: 3, useBy: null }
    const { one } = await room({ kept: 'frozen', frozen, readings: [] })
    await one.submit('take', takes(1_000), 'lead')
    const state = one.state()
    expect(isRunning(state) && state.batches.b1?.dateMark?.lastDay).toBe('2026-03-04')
  })

  it('[LA31] not where the station makes it otherwise, or by another label', async () => {
    const made = await room({ madeOf: ['barley'] })
    expect(refusalOf(await made.one.submit('t', takes(1), 'lead'))).toMatchObject({
      code: 'cannot-take-lot',
      problem: { code: 'made-otherwise' },
    })
    const labelled = await room({ labels: { [madeOf[0] ?? '']: 3 } })
    expect(refusalOf(await labelled.one.submit('t', takes(1), 'lead'))).toMatchObject({
      problem: { code: 'label-changed', ingredient: madeOf[0] },
    })
    const open = await room({ stoodOpen: true })
    expect(refusalOf(await open.other.submit('t', takes(1), 'lead'))).toMatchObject({
      problem: { code: 'stood-open-elsewhere' },
    })
    expect((await open.larder.newest()).lots.a?.amount).toBe(HELD)
  })

  it('[LA55] what touched it where it was made goes along; where that isn’t known here it isn’t taken', async () => {
    const almonds = { component: 'almonds', madeOf: ['almonds'] }
    const there = await room({ touched: [almonds] })
    await there.other.submit('t', takes(1_000), 'lead')
    const state = there.other.state()
    expect(isRunning(state) && state.batches.b1?.soiledBy).toEqual(['almonds'])
    // By this station's document they touch anyway.
    const usual = await room({
      touched: [{ component: 'pita', madeOf: ['pita'] }],
      stoodOpen: true,
    })
    await usual.one.submit('t', takes(1_000), 'lead')
    const own = usual.one.state()
    expect(isRunning(own) && own.batches.b1 && 'soiledBy' in own.batches.b1).toBe(false)

    const unknown: readonly Partial<LotFood>[] = [
      { touched: null },
      { touched: [{ component: 'shrimp', madeOf: ['shrimp'] }] },
      { touched: [{ component: 'almonds', madeOf: ['almonds', 'walnuts'] }] },
      { touched: [], soiledBy: ['shrimp'] },
    ]
    for (const lot of unknown) {
      const { other, larder } = await room(lot)
      expect(refusalOf(await other.submit('t', takes(1_000), 'lead'))).toMatchObject({
        problem: { code: 'touched-unknown' },
      })
      expect((await larder.newest()).lots.a?.amount).toBe(HELD)
    }
  })

  it('[LA50] said to be of a pack of before, it is taken, and the label of before counts beside today’s', async () => {
    const [ingredient = ''] = madeOf
    const newest = { [ingredient]: 7 }
    const read: Label = {
      declarations: { milk: 'contains', sesame: 'free' },
      traits: [],
      claims: {},
      readOn: '2026-02-01',
      readBy: null,
    }
    const rows = [
      { version: 0, label: read, same: true },
      { version: 7, label: { ...read, declarations: { milk: 'free' } }, same: false },
    ] as const
    const history = { newest: () => newest, from: () => rows }
    const { one, larder } = await room({ madeOf }, { labels: history, newestLabels: newest })
    expect(refusalOf(await one.submit('t', takes(1_000), 'lead'))).toMatchObject({
      problem: { code: 'label-changed', ingredient },
    })
    const said = { type: 'confirmLotLabel', lot: 'a', ingredient, pack: 'before', saw: 7 } as const
    expect(await larder.submit('said', said, 'adult-1')).toMatchObject({ answer: 'accepted' })
    expect(await one.submit('again', takes(1_000), 'lead')).toMatchObject({ answer: 'accepted' })
    const state = one.state()
    if (!isRunning(state)) throw new Error('no service')
    expect(state.mixing[ingredient]?.pans).toEqual(['batch/b1'])
    expect(declaredBy(state.station, 'rice', 'milk').state).toBe('contains')
  })

  it('[LA32] two stations that want all of it at once: one gets it, the other is told', async () => {
    const { one, other, larder } = await room()
    const answers = await Promise.all([
      one.submit('mine', takes(HELD), 'lead'),
      other.submit('ours', takes(HELD), 'lead'),
    ])
    const refused = answers.map(refusalOf).filter((one) => one !== null)
    expect(refused).toEqual([
      { code: 'cannot-take-lot', lot: 'a', problem: { code: 'lot-gone', how: 'taken', at: NOON } },
    ])
    expect([heldBy(one) + heldBy(other), (await larder.newest()).lots]).toEqual([HELD, {}])
  })

  it('[LA32] many takings of both, and another class: every milligram is somewhere, once', async () => {
    const { one, other, larder } = await room()
    const amounts = Array.from({ length: 12 }, (_, index) => 100_000 + index * 7_919)
    const asked = amounts.map((amount, index) =>
      (index % 2 === 0 ? one : other).submit(`take-${index}`, takes(amount), 'lead'),
    )
    const answers = await Promise.all(asked)
    expect(answers.map(({ answer }) => answer)).not.toContain('not taken')
    const left = (await larder.newest()).lots.a?.amount ?? 0
    expect(heldBy(one) + heldBy(other) + left).toBe(HELD)
    await larder.submit('gone', { type: 'anotherTookLot', lot: 'a' })
    expect(refusalOf(await one.submit('late', takes(1), 'lead'))).toMatchObject({
      problem: { code: 'lot-gone', how: 'another-class' },
    })
  })

  it('[LA32] sent again under the same id it is taken once', async () => {
    const { one, larder } = await room()
    const first = await one.submit('take', takes(1_000_000), 'lead')
    expect(await one.submit('take', takes(1_000_000), 'lead')).toEqual(first)
    expect([heldBy(one), (await larder.newest()).lots.a?.amount]).toEqual([
      1_000_000,
      HELD - 1_000_000,
    ])
  })

  it('[LA32] an append that fails takes nothing out of the larder', async () => {
    const { one, larder, gated, ports } = await room()
    const before = await larder.newest()
    gated.fail(new Error('the disk is full'))
    void one.submit('take', takes(1_000_000), 'lead')
    await settle()
    expect(await larder.newest()).toEqual(before)
    const again = await openRail({ ...ports, service: 's-one' })
    expect(heldBy(again)).toBe(0)
  })
})
