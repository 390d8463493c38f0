import { describe, expect, test } from 'vitest'
import { civilDate } from '#lib/measure/civil.ts'
import { declaredIn } from '#lib/needs/declared.ts'
import { guestsToFind, heldBuilds, unreadLabels } from '#lib/rooms/care/facts/first-of-all.ts'
import { holdsBefore, isBefore, pansWith } from '#lib/rooms/care/facts/product-before.ts'
import {
  contradictions,
  draftOf,
  EMPTY_LABEL,
  labelFrom,
  labelLines,
  unsaid,
  withClaim,
  withNoTraits,
  withTrait,
  withWord,
} from '#lib/rooms/care/views/label-draft.ts'
import {
  findLabels,
  goesInto,
  isNotSame,
  labelGroups,
  labelOutcomes,
} from '#lib/rooms/care/views/labels.ts'
import { toDos } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { batchCommands } from '#lib/spine/opening-commands.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import { DIETS } from '#lib/station/codes/diets.ts'
import { componentOf } from '#lib/station/find.ts'
import { stationSchema } from '#lib/station/schema.ts'
import {
  at,
  changePan,
  choose,
  demoStation,
  foodOf,
  type Given,
  given,
  needs,
  OPENED_AT,
  ofPortions,
  onward,
  running,
  send,
} from '#tests/support/service.ts'

const never = (): never => {
  throw new Error('the demo station has no ingredient')
}

const groups = labelGroups(demoStation)
const found = (typed: string) =>
  findLabels(groups, typed).flatMap((one) => one.ingredients.map(({ id }) => id))

describe('finding a label', () => {
  test('[P15] stands by component in the line’s order, with the recipes that it comes through', () => {
    expect(groups[0]?.component).toBe('pita')
    expect(groups.map((one) => one.component).sort()).toEqual(
      demoStation.components.map((one) => one.id).sort(),
    )
    const mayonnaise = groups
      .find((one) => one.component === 'tuna')
      ?.ingredients.find((one) => one.id === 'mayonnaise')
    expect(mayonnaise?.through).toEqual(['Tuna mix', 'Dressed mayonnaise'])
  })

  test('[P15] is by the first letters of any word of the food or of what it goes into', () => {
    expect(found('soy')).toContain('soy-sauce')
    expect(found('SAU')).toContain('soy-sauce')
    expect(found('tuna sa')).toContain('mayonnaise')
    expect(found('oy')).not.toContain('soy-sauce')
    expect(found('zzz')).toEqual([])
    expect(found('')).toHaveLength(groups.flatMap((one) => one.ingredients).length)
  })

  test('[P16] an ingredient of the line whose label nobody has read is told', () => {
    expect(unreadLabels(demoStation)).toEqual([])
    const told = given({ type: 'notSameProduct', ingredient: 'soy-sauce' })
    expect(unreadLabels(running(told).station).map((one) => one.id)).toEqual(['soy-sauce'])
  })
})

describe('what comes of a changed label', () => {
  const rice = () =>
    send(
      choose(
        'bean-and-pepper',
        { slaw: 'no', cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
        needs({ code: 'egg', handling: 'leave-out', reason: null }),
      ),
    )
  const handedOver: readonly Given[] = [
    { type: 'start', ...at('1A'), read: true },
    { type: 'finish', ...at('1A') },
    { type: 'handOver', ...at('1A') },
  ]

  test('[P17] builds that are held and guests to find are told by number, and what to print', () => {
    const told = given(rice(), ...handedOver, rice(), {
      type: 'notSameProduct',
      ingredient: 'black-beans',
    })
    const [newest] = labelOutcomes(running(told))
    expect(newest).toMatchObject({
      ingredient: 'black-beans',
      name: 'Black beans, dry',
      read: false,
      held: ['2A'],
      find: ['1A'],
      reprint: ['Black beans'],
    })
    expect(heldBuilds(running(told))).toMatchObject([{ name: '2A', reason: 'label' }])
    expect(guestsToFind(running(told))).toMatchObject([{ name: '1A', reason: 'label' }])
  })

  test('[P17] a hold belongs to the change that made it, the newest change stands first', () => {
    const told = given(
      rice(),
      { type: 'notSameProduct', ingredient: 'black-beans' },
      { type: 'notSameProduct', ingredient: 'almonds' },
    )
    expect(labelOutcomes(running(told)).map((one) => [one.ingredient, one.held])).toEqual([
      ['almonds', []],
      ['black-beans', ['1A']],
    ])
  })

  test('[P17] every component that an ingredient goes into is printed anew', () => {
    expect(goesInto(demoStation, 'lemon-juice')).toEqual(['tuna', 'yogurt-sauce'])
  })
})

describe('a label of another product than what is in the pans', () => {
  const label = {
    declarations: { soy: 'contains' },
    traits: null,
    claims: {},
    readOn: '2026-11-25',
    readBy: 'JB',
  } as const
  const read = (product: 'other' | 'same'): Given => ({
    type: 'changeLabel',
    ingredient: 'black-beans',
    label,
    product,
  })

  test('[P22] its pans are told and asked to be changed, until each is', () => {
    expect(pansWith(running(given()), 'black-beans')).toEqual(['Black beans'])
    const told = given(read('other'))
    const state = running(told)
    expect(labelOutcomes(state)[0]).toMatchObject({ read: true, before: ['Black beans'] })
    expect(holdsBefore(state, 'pan-beans')).toBe(true)
    expect(holdsBefore(state, 'pan-rice')).toBe(false)
    expect(toDos(state)).toMatchObject([
      { kind: 'product-before', pan: 'pan-beans', ingredients: ['Black beans, dry'] },
    ])
    const amount = ofPortions('beans', 24)
    const fromOldBatch = running(onward(told, changePan('pan-beans', amount)))
    expect(labelOutcomes(fromOldBatch)[0]?.before).toEqual(['Black beans'])
    const batch = 'beans-anew'
    const changed = running(
      onward(
        told,
        { type: 'throwOut', what: 'batch', id: 'opening-beans', reason: 'other', initials: 'KT' },
        ...batchCommands(demoStation, componentOf(demoStation, 'beans'), amount, {
          now: OPENED_AT,
          batch,
        }),
        { type: 'changePan', pan: 'pan-beans', amount, ...foodOf('beans'), batch },
      ),
    )
    expect(toDos(changed)).toEqual([])
    expect(labelOutcomes(changed)[0]?.before).toEqual([])
  })

  test('[P22] the product before is neither looked for nor read by itself', () => {
    const { station } = running(given(read('other')))
    const before = station.ingredients.filter((one) => isBefore(one.id))
    expect(before.map((one) => one.name)).toEqual(['Black beans, dry'])
    const shown = labelGroups(station).flatMap((one) => one.ingredients.map(({ id }) => id))
    expect(shown).toContain('black-beans')
    expect(shown.filter(isBefore)).toEqual([])
    const ingredients = station.ingredients.map((one) =>
      isBefore(one.id) ? { ...one, readOn: null } : one,
    )
    expect(unreadLabels({ ...station, ingredients })).toEqual([])
  })

  test('[P22] a label that was only read wrong is of what is in the pans', () => {
    const state = running(given(read('same')))
    expect(labelOutcomes(state)[0]).toMatchObject({ read: true, before: [] })
    expect(toDos(state)).toEqual([])
  })

  test('[P22] what was said not to be the same product is another, until its label is read', () => {
    const told = given({ type: 'notSameProduct', ingredient: 'black-beans' })
    expect(isNotSame(running(told), 'black-beans')).toBe(true)
    expect(isNotSame(running(told), 'almonds')).toBe(false)
    expect(isNotSame(running(onward(told, read('other'))), 'black-beans')).toBe(false)
  })
})

describe('a label that is read', () => {
  const READ_ON = '2026-11-25'
  const read = (draft = EMPTY_LABEL) =>
    labelFrom(demoStation, { ...draft, readBy: ' JB ' }, READ_ON)

  test('[P18] says only what was said: the rest is not declared', () => {
    const draft = withWord(withWord(EMPTY_LABEL, 'soy', 'contains'), 'milk', 'free')
    expect(read(draft)).toEqual({
      declarations: { soy: 'contains', milk: 'free' },
      traits: null,
      claims: {},
      readOn: READ_ON,
      readBy: null,
    })
    expect(read(withWord(draft, 'milk', null)).declarations).toEqual({ soy: 'contains' })
    expect(unsaid(demoStation, draft)).not.toContain('soy')
    expect(unsaid(demoStation, draft)).toContain('gluten')
    expect(unsaid(demoStation, EMPTY_LABEL)).toHaveLength(labelLines(demoStation).length)
  })

  test('[P18] what an unread product once said is not filled in', () => {
    const unread = { ...demoStation.ingredients[0], readOn: null }
    const pita = demoStation.ingredients.find((one) => one.id === 'pita')
    if (!pita) throw new Error('the demo station has no pita')
    expect(draftOf(demoStation, { ...pita, ...unread, declarations: { milk: 'free' } })).toEqual(
      EMPTY_LABEL,
    )
    expect(draftOf(demoStation, pita).declarations).toEqual(pita.declarations)
    expect(draftOf(demoStation, pita).readBy).toBe('')
  })

  test('[P18] a form that nobody touched makes nothing fit a diet or be free of an allergen', () => {
    const untouched = { ...(demoStation.ingredients[0] ?? never()), ...read() }
    expect(untouched.traits).toBeNull()
    for (const code of [...askableAllergens(demoStation), ...DIETS])
      expect(declaredIn(demoStation, untouched, code), code).toBe('unknown')
  })

  test('[P18] none of these is an answer of its own, and the last tick taken away is none', () => {
    const honey = withTrait(EMPTY_LABEL, 'honey', true)
    expect(withTrait(honey, 'honey', false).traits).toBeNull()
    expect(withNoTraits(honey, true).traits).toEqual([])
    expect(withNoTraits(honey, false).traits).toBeNull()
    expect(read(withNoTraits(EMPTY_LABEL, true)).traits).toEqual([])
    const answered = { ...(demoStation.ingredients[0] ?? never()), traits: [], readOn: READ_ON }
    expect(draftOf(demoStation, answered).traits).toEqual([])
    expect(draftOf(demoStation, { ...answered, traits: null }).traits).toBeNull()
  })

  test('[P18] an explicit unknown of gluten doesn’t hide a grain that is contained', () => {
    const [first] = demoStation.ingredients
    if (!first) throw new Error('the demo station has no ingredient')
    const before = { ...first, declarations: { gluten: 'unknown', almond: 'unknown' } as const }
    expect(draftOf(demoStation, before).declarations).toEqual({ almond: 'unknown' })
  })

  test('[P18] the date of reading is the civil date of the station', () => {
    const late = Date.parse('2026-11-26T03:00:00Z')
    expect(civilDate(late, 'America/Chicago')).toBe('2026-11-25')
    expect(civilDate(late, 'UTC')).toBe('2026-11-26')
  })

  test('[P19] traits that follow from an allergen or a kind of one are there without a tick', () => {
    const none = withNoTraits(EMPTY_LABEL, true)
    expect(read(withWord(none, 'milk', 'contains')).traits).toEqual(['dairy'])
    expect(read(withWord(none, 'salmon', 'contains')).traits).toEqual(['fish'])
    expect(read(withWord(none, 'rye', 'contains')).traits).toEqual(['gluten-grain'])
    expect(read(withWord(none, 'molluscs', 'contains')).traits).toEqual(['shellfish'])
    expect(read(withWord(none, 'milk', 'may-contain')).traits).toEqual([])
    expect(read(withTrait(EMPTY_LABEL, 'honey', true)).traits).toEqual(['honey'])
    expect(read(withWord(EMPTY_LABEL, 'milk', 'contains')).traits).toBeNull()
  })

  test('[P19] a tick that contradicts an allergen is told, and no other label is refused', () => {
    const dairy = withTrait(withWord(EMPTY_LABEL, 'milk', 'free'), 'dairy', true)
    expect(contradictions(demoStation, dairy)).toEqual([{ trait: 'dairy', code: 'milk' }])
    const unlisted = withWord(dairy, 'milk', 'not-listed')
    expect(contradictions(demoStation, unlisted)).toEqual([{ trait: 'dairy', code: 'milk' }])
    expect(contradictions(demoStation, withWord(dairy, 'milk', 'may-contain'))).toEqual([])
    for (const { code, kinds } of labelLines(demoStation))
      for (const one of [code, ...kinds]) {
        const draft = withWord(EMPTY_LABEL, one, 'contains')
        const ingredients = demoStation.ingredients.map((each) =>
          each.id === 'cabbage' ? { ...each, ...read(draft) } : each,
        )
        expect(stationSchema.safeParse({ ...demoStation, ingredients }).success, one).toBe(true)
      }
  })

  test('[P18] halal and kosher only as declared', () => {
    const draft = withClaim(withClaim(EMPTY_LABEL, 'halal', 'declared'), 'kosher', 'not')
    expect(read(draft).claims).toEqual({ halal: 'declared', kosher: 'not' })
    expect(read(withClaim(draft, 'halal', null)).claims).toEqual({ kosher: 'not' })
  })
})
