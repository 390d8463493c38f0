/** What was in pans as food was made is in that food, though the pans were changed since. */

import { describe, expect, it } from 'vitest'
import { handedOverLists } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { handedOverWords } from '#lib/rooms/food/words/handed-over-en.ts'
import { labelOf } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { read } from '#tests/support/food.ts'
import {
  at,
  buildIn,
  change,
  changePan,
  choose,
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  needs,
  ofPortions,
  onward,
  ready,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

type Step = 'start' | 'finish' | 'handOver' | 'remake' | 'cancel' | 'takeBack'

const without = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', peppers: 'no' } as const
const chicken = (code: 'milk' | 'peanut', more: Record<string, 'no'> = {}) =>
  choose(
    'garden-chicken',
    { ...without, ...more },
    {
      base: 'rice',
      ...needs({ code, handling: 'keep-apart', reason: 'allergy' }),
    },
  )
const milkApart = chicken('milk')
const withSlaw = chicken('peanut')
const noSlaw = chicken('peanut', { slaw: 'no' })
const step = (name: string, type: Step): Given => {
  const of = at(name)
  switch (type) {
    case 'start':
      return { type, ...of, read: true }
    case 'takeBack':
      return { type, ...of, made: false }
    default:
      return { type, ...of }
  }
}
const steps = (name: string, ...types: readonly Step[]): readonly Given[] =>
  types.map((type) => step(name, type))
const soil = (pan: string, by: string): Given => ({ type: 'soilPan', pan, by })
const newChicken = changePan('pan-chicken', ofPortions('chicken', 10))
const holdOf = (told: Told, name: string) => buildIn(told, name).hold?.reason ?? null
const toFind = (told: Told) => Object.keys(running(told).toFind)
const toTell = (told: Told) => running(told).toTell

const peanutIs = (ingredient: string, peanut: Declaration): Given => {
  const found = demoStation.ingredients.find((one) => one.id === ingredient)
  if (!found) throw new Error(`the demo station has no ${ingredient}`)
  const label = labelOf(found)
  const declarations = { ...label.declarations, peanut }
  return { type: 'changeLabel', ingredient, product: 'same', label: { ...label, declarations } }
}

const soiled = ready(
  peanutIs('almonds', 'free'),
  soil('pan-chicken', 'almonds'),
  send(noSlaw, noSlaw, noSlaw, noSlaw),
  ...steps('1A', 'start', 'finish', 'handOver'),
  ...steps('1B', 'start', 'finish'),
  ...steps('1C', 'start'),
)
const told = onward(soiled, newChicken, peanutIs('almonds', 'contains'))

describe('a scoop that was in a pan until it was changed', () => {
  it('[S174] is in what was handed over before: its guest is found', () => {
    expect(toFind(told)).toEqual(['1A'])
  })

  it('[S174] is in what stands made and in what was begun before, which are held', () => {
    expect(holdOf(told, '1B')).toBe('label')
    expect(codeOf(when(told, { type: 'handOver', ...at('1B') }))).toBe('build-held')
    expect(holdOf(told, '1C')).toBe('label')
    expect(codeOf(when(told, { type: 'finish', ...at('1C') }))).toBe('build-held')
  })

  it('[S174] isn’t in what is begun after', () => {
    expect(holdOf(told, '1D')).toBe(null)
    expect(holdOf(onward(told, ...steps('1D', 'start', 'finish')), '1D')).toBe(null)
  })

  it('[S174] nor in what was made before that pan was loaded', () => {
    const before = onward(
      ready(
        peanutIs('almonds', 'free'),
        send(noSlaw),
        ...steps('1A', 'start', 'finish', 'handOver'),
      ),
      newChicken,
      soil('pan-chicken', 'almonds'),
      newChicken,
      peanutIs('almonds', 'contains'),
    )
    expect(toFind(before)).toEqual([])
  })

  it('[S174] is in what was begun before and finished after it was changed', () => {
    const finished = onward(soiled, newChicken, ...steps('1C', 'finish', 'handOver'))
    expect(toFind(onward(finished, peanutIs('almonds', 'contains')))).toContain('1C')
  })

  it('[S174] is in what was finished before, taken back and finished again', () => {
    const again = onward(soiled, newChicken, ...steps('1B', 'takeBack', 'finish'))
    expect(holdOf(onward(again, peanutIs('almonds', 'contains')), '1B')).toBe('label')
  })

  it('[S174] isn’t in what was thrown out and is made again of what is there now', () => {
    const again = onward(soiled, newChicken, ...steps('1B', 'remake', 'start'))
    expect(holdOf(onward(again, peanutIs('almonds', 'contains')), '1B')).toBe(null)
  })

  it('[S174] stays in food also where what stands there next had the same scoop in it', () => {
    const again = onward(
      soiled,
      { type: 'soilPan', pan: 'pan-chicken', by: 'almonds', backup: true },
      {
        type: 'changePan',
        pan: 'pan-chicken',
        from: 'back-up-chicken',
        ...read(150),
      },
    )
    expect(running(again).pans['pan-chicken']?.soiledBy).toEqual(['almonds'])
    expect(toFind(onward(again, peanutIs('almonds', 'contains')))).toContain('1A')
  })
})

describe('a build in the making', () => {
  it('[S175] says which of its components came out of back-up pans as it was started', () => {
    const started = (given: Told) =>
      eventsOf(when(given, { type: 'start', ...at('1A'), read: true }))[0]
    expect(started(ready(send(milkApart)))).toMatchObject({ behind: ['slaw'] })
    expect(started(ready(send(milkApart), soil('pan-chicken', 'cheddar')))).toMatchObject({
      behind: ['rice', 'chicken', 'slaw'],
    })
    expect(started(ready(send(choose('garden-chicken'))))).not.toHaveProperty('behind')
  })

  it('[S175] is thrown out of the pans from which it was begun', () => {
    const line = ready(send(milkApart), ...steps('1A', 'start'), soil('pan-chicken', 'cheddar'))
    const [answered] = eventsOf(when(line, { type: 'acknowledge', ...at('1A'), foodInIt: true }))
    expect(answered).toMatchObject({ type: 'stopAcknowledged' })
    const wasted = (answered as { wasted: readonly { pan: string }[] }).wasted
    expect(wasted.map(({ pan }) => pan)).toContain('pan-chicken')
    expect(wasted.map(({ pan }) => pan)).not.toContain('back-up-chicken')
  })
})

describe('what a guest had of a build that was made again', () => {
  const had = (choice: typeof milkApart, ...more: readonly Step[]) =>
    ready(send(choice), ...steps('1A', 'start', 'finish', 'handOver', 'remake', ...more))

  it('[S176] is listed once a scoop is told late, whatever became of the build', () => {
    for (const more of [[], ['cancel'], ['start'], ['start', 'finish', 'handOver']] as const) {
      const late = onward(had(milkApart, ...more), soil('pan-chicken', 'cheddar'))
      expect(toTell(late)['build/1A']).toMatchObject({
        because: 'contact',
        builds: [{ build: '1A' }],
      })
    }
  })

  it('[S176] is judged as what it was then', () => {
    const changed = onward(had(withSlaw), change('1A', noSlaw), peanutIs('cabbage', 'contains'))
    expect(toTell(changed)['build/1A']).toMatchObject({ because: 'label' })
    expect(holdOf(changed, '1A')).toBe(null)
  })

  it('[S176] by the pans of then, though it would come from a back-up pan now', () => {
    const late = onward(had(chicken('peanut', { slaw: 'no' })), soil('pan-chicken', 'almonds'))
    expect(toTell(late)['build/1A']).toMatchObject({ because: 'contact' })
  })

  it('[S176] isn’t listed for what doesn’t concern its guest, nor twice', () => {
    expect(toTell(onward(had(milkApart), soil('pan-chicken', 'beans')))['build/1A']).toBeUndefined()
    const listed = onward(had(milkApart), soil('pan-chicken', 'cheddar'))
    const once = toTell(listed)['build/1A']
    expect(toTell(onward(listed, soil('pan-chicken', 'almonds')))['build/1A']).toEqual(once)
  })

  it('[S176] is said of its guest and not of a food', () => {
    const [list] = handedOverLists(running(onward(had(milkApart), soil('pan-chicken', 'cheddar'))))
    expect(list).toMatchObject({ what: 'build', component: '1A' })
    expect(handedOverWords.title('1A', 'build')).toBe(
      'Find the guest of 1-\u2060A: what they had before',
    )
    expect(handedOverWords.list('10:05', [{ build: '1A', time: '10:05' }], 0, 'build')).toBe(
      'Handed over since 10:05, and made again later: 1-\u2060A at 10:05.',
    )
  })

  it('[S176] stays listed until the person in charge answers, and holds the close', () => {
    const listed = onward(had(milkApart, 'cancel'), soil('pan-chicken', 'cheddar'))
    expect(codeOf(when(listed, { type: 'close' }))).toBe('handed-over-first')
    const answered = onward(listed, {
      type: 'answerHandedOver',
      what: 'build',
      id: '1A',
      answer: 'told',
      seen: 1,
      initials: 'AB',
    })
    expect(toTell(answered)['build/1A']).toBeUndefined()
  })
})
