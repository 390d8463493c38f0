import { describe, expect, test } from 'vitest'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { isLong, lidsOver, MOST_IN_A_ROW, rowsOfWells } from '#lib/rooms/making/views/lids.ts'
import type { StopPan } from '#lib/rooms/making/views/stop-line.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { pansOf } from '#lib/station/find.ts'
import {
  at,
  change,
  choose,
  given,
  needs,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const WITH = { placement: 'in', portions: 1 } as const
const NO = { placement: 'no', portions: 0 } as const
const need = (code: Need['code'], handling: Need['handling'] = 'keep-apart'): Need => ({
  code,
  handling,
  reason: null,
})
const start = (name: string) => ({ type: 'start', ...at(name) }) as const
const plain = () => choose('garden-chicken')
const making = onward(ready(send(plain())), start('1A'))

const lineOf = (told: Told): Readonly<Record<string, StopPan>> => {
  const [stopped] = stoppedBuilds(running(told))
  if (!stopped) throw new Error('nothing is stopped')
  return stopped.line
}

const kinds = (line: Readonly<Record<string, StopPan>>) =>
  Object.fromEntries(Object.entries(line).map(([id, { kind }]) => [id.replace('pan-', ''), kind]))

describe('the line of a changed build', () => {
  const changed = onward(
    making,
    change('1A', choose('garden-chicken', { cheddar: 'no', peppers: 2 }, { base: 'rice' })),
  )

  test('[A25] says of each pan what it was and becomes, with the scoop where it is to be taken', () => {
    const line = lineOf(changed)
    expect(line['pan-cheddar']).toEqual({ kind: 'changed', from: WITH, to: NO, take: null })
    expect(line['pan-peppers']).toMatchObject({
      kind: 'changed',
      from: WITH,
      to: { placement: 'in', portions: 2 },
      take: { count: 2, tool: { tool: 'scoop' } },
    })
    expect(line['pan-pita']).toMatchObject({ kind: 'changed', from: WITH, to: NO, take: null })
    expect(line['pan-rice']).toMatchObject({ kind: 'changed', from: NO, to: WITH })
    expect(line['pan-rice']).toHaveProperty('take.tool.number')
  })

  test('[A25] every pan keeps its place: what is as before and what is not in it say so', () => {
    const line = lineOf(changed)
    expect(Object.keys(line)).toEqual(pansOf(running(changed).station).map(({ id }) => id))
    expect(line['pan-chicken']).toEqual({ kind: 'same', part: WITH })
    expect(line['pan-tuna']).toEqual({ kind: 'idle' })
    const said = Object.values(line).filter(({ kind }) => kind !== 'idle' && kind !== 'same')
    expect(said).toHaveLength(4)
  })

  test('[A25] a need that came new shuts its pans, those that it was made of struck', () => {
    const apart = onward(
      making,
      change(
        '1A',
        choose(
          'garden-chicken',
          { cheddar: 'no', 'yogurt-sauce': 'no', slaw: 'no' },
          needs(need('milk')),
        ),
      ),
    )
    const line = lineOf(apart)
    expect(line['pan-cheddar']).toEqual({ kind: 'shut', from: WITH })
    expect(line['pan-chicken']).toMatchObject({ kind: 'same' })
    expect(line['pan-almonds']).toMatchObject({ kind: expect.stringMatching(/shut|idle/) })
  })
})

describe('the line of a build that ends or is held', () => {
  test('[A26] cancelled, all that it was made of is struck, and nothing is to be taken', () => {
    const line = lineOf(onward(making, { type: 'cancel', ...at('1A') }))
    const struck = Object.values(line).filter(({ kind }) => kind === 'struck')
    expect(struck).toHaveLength(6)
    expect(new Set(Object.values(kinds(line)))).toEqual(new Set(['struck', 'idle']))
  })

  const told = (needs: readonly Need[]) =>
    onward(making, { type: 'tellNeed', ...at('1A'), asked: 'needs', needs: [...needs] })

  test('[A26] a need told late: kept apart under lids, left out marked as not for this guest', () => {
    expect(kinds(lineOf(told([need('milk')])))).toMatchObject({
      cheddar: 'shut',
      'yogurt-sauce': 'shut',
      chicken: 'same',
      rice: 'idle',
    })
    const out = lineOf(told([need('milk', 'leave-out')]))
    expect(out['pan-cheddar']).toEqual({ kind: 'marked', from: WITH, why: 'not-for-guest' })
    expect(Object.values(out).some(({ kind }) => kind === 'shut')).toBe(false)
  })

  test('[A26] it stays so while the build waits for the counter, and no longer', () => {
    const held = onward(told([need('milk')]), {
      type: 'acknowledge',
      ...at('1A'),
      foodInIt: true,
    })
    const { now } = assemblyView(running(held), null)
    expect(now?.heldLine?.['pan-cheddar']).toEqual({ kind: 'shut', from: WITH })
    expect(assemblyView(running(making), null).now?.heldLine).toBeNull()
  })

  test('[A26] a pan that may not be served is marked, and the others are as before', () => {
    const off = onward(making, {
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-chicken',
      reading: { tenths: 1200, scale: 'F', probe: 'p', where: 'middle-stirred' },
      initials: 'AB',
    })
    const line = lineOf(off)
    expect(line['pan-chicken']).toEqual({ kind: 'marked', from: WITH, why: 'off-sale' })
    expect(line['pan-peppers']).toMatchObject({ kind: 'same' })
  })
})

describe('lids', () => {
  const { station } = running(given())
  const pans = pansOf(station)
  const over = (...shut: readonly number[]) =>
    lidsOver(pans, ({ id }) => shut.some((place) => pans[place]?.id === id)).map((run) =>
      run.map((id) => pans.findIndex((pan) => pan.id === id)),
    )

  test('[A27] neighbours share one, and what is taken between them parts it', () => {
    expect(over()).toEqual([])
    expect(over(3)).toEqual([[3]])
    expect(over(0, 1, 2, 5, 7, 8)).toEqual([[0, 1, 2], [5], [7, 8]])
    expect(over(...pans.keys())).toEqual([[...pans.keys()]])
  })

  test('[A27] a line stands in one row up to eleven pans, beyond that by well', () => {
    expect(pans.length).toBeLessThanOrEqual(MOST_IN_A_ROW)
    expect(isLong(station)).toBe(false)
    expect(rowsOfWells(station, false)).toEqual([station.line.wells])
    expect(rowsOfWells(station, true)).toHaveLength(station.line.wells.length)
    const [well] = station.line.wells
    if (!well) throw new Error('no well')
    const twelve = Array.from({ length: 6 }, () => ({ ...well, pans: well.pans.slice(0, 2) }))
    expect(isLong({ ...station, line: { ...station.line, wells: twelve } })).toBe(true)
    expect(isLong({ ...station, line: { ...station.line, wells: twelve.slice(1) } })).toBe(false)
  })
})
