/** What is known of a guest or of a pan only once food was taken: nobody goes untold for that. */

import { describe, expect, it } from 'vitest'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { labelOf } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { read } from '#tests/support/food.ts'
import {
  at,
  backupReady,
  buildIn,
  change,
  changePan,
  choose,
  codeOf,
  demoStation,
  foodOf,
  type Given,
  happening,
  needs,
  ofPortions,
  onward,
  ready,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

type Step = 'start' | 'finish' | 'handOver' | 'remake' | 'cancel'

const without = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', peppers: 'no' } as const
const apart = (code: 'milk' | 'peanut') =>
  ({ code, handling: 'keep-apart', reason: 'allergy' }) as const
const chicken = (...codes: ('milk' | 'peanut')[]) =>
  choose('garden-chicken', without, {
    base: 'rice',
    ...(codes.length > 0 ? needs(...codes.map(apart)) : {}),
  })
const noSlaw = choose(
  'garden-chicken',
  { ...without, slaw: 'no' },
  { base: 'rice', ...needs(apart('peanut')) },
)
const bothNoSlaw = { ...noSlaw, ...needs(apart('milk'), apart('peanut')) }
const steps = (name: string, ...types: readonly Step[]): readonly Given[] =>
  types.map(
    (type): Given => (type === 'start' ? { type, ...at(name), read: true } : { type, ...at(name) }),
  )
const had = steps('1A', 'start', 'finish', 'handOver')
const soil = (pan: string, by: string, backup?: true): Given => ({
  type: 'soilPan',
  pan,
  by,
  ...(backup ? { backup } : {}),
})
const newChicken = changePan('pan-chicken', ofPortions('chicken', 10))
const answer = (foodInIt: boolean): Given => ({ type: 'acknowledge', ...at('1A'), foodInIt })
const tellPeanut: Given = {
  type: 'tellNeed',
  ...at('1A'),
  asked: 'needs',
  needs: [apart('peanut')],
}
const holdOf = (told: Told) => buildIn(told, '1A').hold?.reason ?? null
const toFind = (told: Told) => Object.keys(running(told).toFind)
const listOf = (told: Told) => running(told).toTell['build/1A']

const cabbage = (peanut: Declaration, product: 'same' | 'other'): Given => {
  const found = demoStation.ingredients.find((one) => one.id === 'cabbage')
  if (!found) throw new Error('the demo station has no cabbage')
  const label = labelOf(found)
  const declarations = { ...label.declarations, peanut }
  return { type: 'changeLabel', ingredient: 'cabbage', product, label: { ...label, declarations } }
}
const hasPeanut = cabbage('contains', 'same')

describe('what a guest tells once they had food', () => {
  it.each([
    ['and is made again for them', [...had, tellPeanut, answer(true), change('1A', noSlaw)]],
    ['as it is to be made again', [...had, ...steps('1A', 'remake'), tellPeanut]],
    ['with a change of it', [...had, ...steps('1A', 'remake'), change('1A', noSlaw)]],
    [
      'before it is cancelled',
      [...had, ...steps('1A', 'remake'), tellPeanut, ...steps('1A', 'cancel')],
    ],
  ])('[S177] counts for what they had: told %s', (_, acts) => {
    const told = ready(send(chicken()), ...acts)
    expect(listOf(told)).toBeUndefined()
    expect(listOf(onward(told, hasPeanut))).toMatchObject({ because: 'label' })
  })

  it('[S177] stays known where it came with a change and the food is left with them', () => {
    const told = ready(send(chicken('milk')), ...had, soil('pan-chicken', 'cheddar'))
    expect(toFind(told)).toEqual(['1A'])
    const left = onward(told, change('1A', bothNoSlaw), answer(false))
    expect(buildIn(left, '1A')).toMatchObject({ state: 'handed-over', told: true })
    expect(toFind(left)).toEqual([])
    expect(toFind(onward(left, hasPeanut))).toEqual(['1A'])
  })
})

describe('a list of what a guest had', () => {
  const listed = ready(
    send(chicken('peanut')),
    ...had,
    ...steps('1A', 'remake'),
    soil('pan-chicken', 'almonds'),
  )

  it('[S178] says the label once that is found, and stays one list', () => {
    expect(listOf(listed)).toMatchObject({ because: 'contact' })
    const worse = listOf(onward(listed, hasPeanut))
    expect(worse).toMatchObject({ because: 'label', builds: [{ build: '1A' }] })
    expect(worse?.builds).toHaveLength(1)
    expect(listOf(onward(listed, soil('pan-rice', 'almonds')))).toEqual(listOf(listed))
  })

  it('[S179] takes nobody off the list of a batch that was never good', () => {
    const told = onward(listed, newChicken, {
      type: 'throwOut',
      what: 'batch',
      id: 'opening-chicken',
      amount: 0,
      reason: 'not-cooked',
      initials: 'KT',
    })
    expect(running(told).toTell['batch/opening-chicken']).toMatchObject({
      builds: [{ build: '1A' }],
    })
  })
})

describe('a foreign scoop in a back-up pan', () => {
  it('[S180] is told of one that is used up: who has food of it is found', () => {
    const told = ready(
      { type: 'setBackup', component: 'chicken', ready: false },
      backupReady('chicken', 1),
      soil('pan-chicken', 'cheddar'),
      send(chicken('milk')),
      ...had,
    )
    expect(running(told).backupPans['back-up-chicken']?.amount).toBe(0)
    expect(toFind(onward(told, soil('pan-chicken', 'cheddar', true)))).toEqual(['1A'])
  })

  it('[S180] is told of one that isn’t protected any more', () => {
    const told = ready(send(chicken('milk')), ...had, cabbage('free', 'other'))
    expect(running(told).backupPans['back-up-slaw']?.guarded).toBe(false)
    expect(toFind(told)).toEqual([])
    expect(toFind(onward(told, soil('pan-slaw', 'cheddar', true)))).toEqual(['1A'])
  })

  it('[S180] is told after another one, and each once', () => {
    const told = ready(send(chicken('milk')), ...had, soil('pan-slaw', 'rice', true), answer(false))
    expect(codeOf(when(told, soil('pan-slaw', 'rice', true)))).toBe('already-so')
    expect(toFind(onward(told, soil('pan-slaw', 'cheddar', true)))).toEqual(['1A'])
  })

  it('[S180] is told of one that never was protected, and goes along onto the line', () => {
    const told = ready(
      {
        type: 'setBackup',
        component: 'tuna',
        backup: 'back-up-tuna',
        ready: true,
        amount: ofPortions('tuna', 4),
        ...foodOf('tuna'),
      },
      soil('pan-tuna', 'almonds', true),
      { type: 'changePan', pan: 'pan-tuna', from: 'back-up-tuna', ...read(38) },
    )
    expect(running(told).pans['pan-tuna']?.soiledBy).toEqual(['almonds'])
  })
})

describe('what was begun out of a back-up pan', () => {
  const begun = ready(
    soil('pan-chicken', 'cheddar'),
    send(chicken('milk')),
    ...steps('1A', 'start'),
  )
  const changed = onward(begun, newChicken)

  it('[S181] is finished out of it though the pan on the line is clean by then', () => {
    expect(holdOf(changed)).toBe(null)
    const made = onward(changed, ...steps('1A', 'finish'))
    expect(buildIn(made, '1A').took.map(({ pan }) => pan)).toContain('back-up-chicken')
    expect(codeOf(when(made, { type: 'handOver', ...at('1A') }))).toBe(null)
  })

  it('[S181] is shown so', () => {
    const now = assemblyView(running(changed), null).now
    expect(now?.backups).toContain('Herb chicken')
    expect(now?.pans['pan-chicken']).toMatchObject({ kind: 'take', fromBackup: true })
  })

  it('[S181] is held where it can’t be finished, and waits again once that is answered', () => {
    const moved = onward(begun, {
      type: 'changePan',
      pan: 'pan-chicken',
      from: 'back-up-chicken',
      ...read(150),
    })
    expect(codeOf(when(moved, { type: 'finish', ...at('1A') }))).toBe('build-held')
    expect(holdOf(moved)).toBe('contact')
    const again = onward(moved, answer(true))
    expect(buildIn(again, '1A')).toMatchObject({ state: 'waiting', hold: null })
    expect(onward(again, ...had).state.handedOver).toBe(1)
  })

  it('[S182] is held as strictly where an older log doesn’t say what it was begun from', () => {
    const bare = happening(ready(send(chicken('milk'))), [{ type: 'buildStarted', ...at('1A') }])
    expect(buildIn(bare, '1A').behind).toBeUndefined()
    expect(holdOf(onward(bare, soil('pan-chicken', 'beans')))).toBe(null)
    expect(holdOf(onward(bare, soil('pan-chicken', 'cheddar')))).toBe('contact')
  })
})
