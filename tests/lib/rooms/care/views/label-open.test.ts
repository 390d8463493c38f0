import { describe, expect, test } from 'vitest'
import { openBeside } from '#lib/rooms/care/facts/label-open.ts'
import { labelOutcomes } from '#lib/rooms/care/views/labels.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import {
  at,
  change,
  choose,
  demoStation,
  type Given,
  needs,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const need = (code: Need['code'], handling: Need['handling']): Need => ({
  code,
  handling,
  reason: null,
})
const NONE = { slaw: 'no', cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const

/** Beans and peppers on rice for who leaves egg out: nothing of it says egg. */
const eggOut = send(
  choose('bean-and-pepper', NONE, { ...needs(need('egg', 'leave-out')), base: 'rice' }),
)
/** Chicken on rice, apart from milk. */
const milkApart = send(
  choose(
    'garden-chicken',
    { ...NONE, peppers: 'no' },
    { ...needs(need('milk', 'keep-apart')), base: 'rice' },
  ),
)

const goesOut = (name: string): readonly Given[] => [
  { type: 'start', ...at(name), read: true },
  { type: 'finish', ...at(name) },
  { type: 'handOver', ...at(name) },
]

const read = (
  ingredient: string,
  declarations: Readonly<Record<string, Declaration>> = {},
): Given => {
  const found = demoStation.ingredients.find((one) => one.id === ingredient)
  return {
    type: 'changeLabel',
    ingredient,
    label: {
      declarations: { ...found?.declarations, ...declarations },
      traits: null,
      claims: {},
      readOn: '2026-11-25',
      readBy: 'JB',
    },
    product: 'same',
  }
}
const notSame = (ingredient: string): Given => ({ type: 'notSameProduct', ingredient })

const openOf = (told: Told) =>
  labelOutcomes(running(told)).map(({ ingredient, isNewest, held, find }) => ({
    ingredient,
    isNewest,
    held,
    find,
  }))

describe('what is still open of a label', () => {
  const first = ready(eggOut, ...goesOut('1A'), eggOut, notSame('black-beans'))

  test('[P50] all that is open of it is told with its newest change, whichever change made it', () => {
    const told = onward(first, read('black-beans', { egg: 'contains' }), eggOutElse())
    expect(openOf(told)).toEqual([
      { ingredient: 'black-beans', isNewest: true, held: ['2A'], find: ['1A'] },
      { ingredient: 'black-beans', isNewest: false, held: [], find: [] },
    ])
  })

  test('[P50] another label in between takes nothing of it away', () => {
    const told = onward(first, notSame('almonds'), read('black-beans', { egg: 'contains' }))
    expect(openOf(told)[0]).toMatchObject({ held: ['2A'], find: ['1A'] })
    const between = openOf(onward(first, notSame('almonds')))
    expect(between).toMatchObject([
      { ingredient: 'almonds', held: [], find: [] },
      { ingredient: 'black-beans', held: ['2A'], find: ['1A'] },
    ])
  })

  test('[P50] a label that is found to fit after all leaves what is held for it in sight', () => {
    const told = onward(first, read('black-beans'), notSame('almonds'))
    const { find } = running(told).toFind['1A'] ? { find: ['1A'] } : { find: [] }
    const open = openOf(told).filter((one) => one.isNewest)
    const all = (of: 'held' | 'find') => open.flatMap((one) => one[of]).sort()
    expect(all('find')).toEqual(find)
    expect(all('held')).toEqual(heldIn(told))
  })

  test('[P50] what is held since a back-up pan is gone is of the label that reaches it', () => {
    const covered = ready(read('black-beans', { milk: 'contains' }), milkApart)
    expect(openOf(covered)).toMatchObject([{ held: [], find: [] }])
    const told = onward(covered, { type: 'setBackup', component: 'chicken', ready: false })
    expect(running(told).tickets.t1?.builds[0]?.hold?.reason).toBe('contact')
    expect(openOf(told)).toMatchObject([{ ingredient: 'black-beans', held: ['1A'] }])
  })

  test('[P50] a change that fits takes it off the list', () => {
    const other = choose('garden-chicken', NONE, {
      ...needs(need('egg', 'leave-out')),
      base: 'rice',
    })
    const told = onward(first, change('2A', other))
    expect(openOf(told)).toMatchObject([{ held: heldIn(told), find: ['1A'] }])
  })

  test('[P50] what is open for something else is told beside it', () => {
    const told = onward(first, notSame('almonds'))
    const [almonds, beans] = labelOutcomes(running(told))
    if (!almonds || !beans) throw new Error('two labels changed')
    expect(openBeside(running(told), [almonds])).toEqual({ held: ['2A'], find: ['1A'] })
    expect(openBeside(running(told), [almonds, beans])).toEqual({ held: [], find: [] })
    const needTold = onward(ready(eggOut), {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'needs',
      needs: [need('egg', 'leave-out'), need('vegan', 'keep-apart')],
    })
    expect(openBeside(running(needTold), [])).toEqual({ held: heldIn(needTold), find: [] })
  })
})

/** A guest who leaves nothing out: no label holds it. */
function eggOutElse(): Given {
  return send(choose('harbor-tuna'))
}

function heldIn(told: Told): readonly string[] {
  return Object.values(running(told).tickets)
    .flatMap(({ number, builds }) =>
      builds.flatMap(({ hold, letter }) => (hold ? [`${number}${letter}`] : [])),
    )
    .sort()
}
