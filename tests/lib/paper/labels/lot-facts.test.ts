import { describe, expect, it } from 'vitest'
import type { LotFood } from '#lib/larder/lot.ts'
import { type LabelsHere, type LotShown, larderShown } from '#lib/larder/shelf-view.ts'
import type { LabelTexts } from '#lib/paper/labels/label-texts.ts'
import { hasLabel, lotFacts, saidOfLot } from '#lib/paper/labels/lot-facts.ts'
import { NOTHING_NAMED } from '#lib/paper/words/labels-en.ts'
import { larderLabelsEn } from '#lib/paper/words/larder-labels-en.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { coldRice, coolingRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at } from '#tests/support/readings.ts'
import { demoStation } from '#tests/support/service.ts'

const NOW = at('15:00')
const WHERE = { timeZone: demoStation.timeZone, scale: 'F', days: 7, isDemo: false } as const

const wordsOf = ({ about, parts, foot }: LabelTexts): string =>
  [
    about,
    ...[...parts, ...foot].flatMap((part) =>
      part.kind === 'row'
        ? part.cells.flatMap(({ label, value, blank }) => [
            label,
            value,
            blank === null ? '' : '__',
          ])
        : [part.lead, part.items.join(', ')],
    ),
  ]
    .filter((one) => one !== '')
    .join(' ')

const LABELS: LabelsHere = {
  newest: () => ({}),
  from: () => [],
  nameOf: (_, id) => id,
  labelOf: () => null,
  allergensOf: () => null,
}

const shownOf = (food: LotFood, labels = LABELS): LotShown => {
  const state = larderAfter([[at('14:30'), setAside('a', food)]])
  const [lot] = larderShown(state, NOW, labels).lots
  if (!lot) throw new Error('the larder is empty')
  return lot
}
const labelOf = (food: LotFood): string => {
  const lot = shownOf(food)
  const where = { ...WHERE, timeZone: lot.timeZone }
  return wordsOf(larderLabelsEn.texts(lotFacts(demoStation, lot, NOW), 'Alder Hall', where))
}

describe('a lot’s label', () => {
  it('[PA40] says whose it is, its shelf or a blank, its last day with the hour, and what is still to be read', () => {
    const cold = labelOf(coldRice())
    expect(cold).toMatch(/^Alder Hall · /)
    expect(cold).toContain('Shelf __')
    expect(cold).toContain('Set aside')
    expect(cold).toMatch(/Discard by \w{3}, \w{3} \d+, 11:59 PM/)
    const cooling = labelOf(coolingRice())
    expect(cooling).toMatch(
      /41 °F or below by \w{3}, \w{3} \d+, \d+:\d\d [AP]M time __ initials __/,
    )
  })

  it('[PA40] is made of what its ids say by labels of today, and of packs of before', () => {
    const none = { before: [], touched: [] }
    expect(saidOfLot(demoStation, { ...none, madeOf: ['cheddar'] }, []).contains).toMatchObject([
      { code: 'milk' },
    ])
    const [pack] = demoStation.ingredients.filter(
      ({ declarations }) => declarations.fish === 'contains',
    )
    if (!pack) throw new Error('the demo has fish')
    const { id: ingredient, name: _, ...label } = pack
    const before = [{ ingredient, label }]
    expect(
      saidOfLot(demoStation, { ...none, madeOf: ['rice'], before }, []).contains.map(
        ({ code }) => code,
      ),
    ).toContain('fish')
    const stranger = saidOfLot(demoStation, { ...none, madeOf: ['kelp'] }, [])
    expect(stranger.unread).toEqual(['kelp'])
    const touched = [{ component: 'cheddar', madeOf: ['cheddar'] }]
    expect(saidOfLot(demoStation, { ...none, madeOf: ['rice'], touched }, []).touches).toContain(
      'milk',
    )
    expect(
      saidOfLot(demoStation, { ...none, madeOf: ['rice'], touched: null }, []).contactKnown,
    ).toBe(false)
  })

  it('[PA40] says of a scoop that went in what it was of, also where its station has that no more', () => {
    const touched = [{ component: 'gone-cheese', madeOf: ['cheddar'] }]
    const made = { madeOf: ['rice'], before: [], touched }
    const soiled = saidOfLot(demoStation, made, ['gone-cheese'])
    expect(soiled.mayContain.map(({ code }) => code)).toContain('milk')
    expect(soiled.soiledBy).toEqual(['gone-cheese'])
    // Nobody knows what that was made of: nothing is said to be absent.
    const unknown = saidOfLot(demoStation, { ...made, touched: null }, ['stranger'])
    expect(unknown.notKnown).toContain('peanut')
    expect(unknown.notKnown).toContain('milk')
  })

  it('[PA40] in the freezer says its maker’s date, which no day of thawing moves', () => {
    const frozen = { on: '2026-10-01', daysLeft: 6, useBy: '2026-10-03' }
    const said = labelOf(coldRice({ kept: 'frozen', dateMark: null, frozen }))
    expect(said).toContain('never past the maker’s date, Sat, Oct 3')
  })

  it('[PA40] isn’t printed of what goes into the bin', () => {
    const lot = shownOf(coldRice())
    expect(hasLabel(lot)).toBe(true)
    expect(hasLabel({ ...lot, bound: 'cooling-missed' })).toBe(false)
    expect(hasLabel({ ...lot, barred: { code: 'lot-bound', why: 'date' } })).toBe(false)
    expect(hasLabel({ ...lot, barred: { code: 'lot-unread', since: NOW } })).toBe(true)
  })

  it('[PA40] of another station is read where the house has read it, and asks for what that one asks', () => {
    const read = UNREAD_LABEL
    const house: LabelsHere = {
      ...LABELS,
      nameOf: (_, id) => (id === 'kelp' ? 'Dried kelp' : 'Whole mustard'),
      labelOf: (id) =>
        id === 'mustard-seed'
          ? { ...read, readOn: '2026-11-01', declarations: { mustard: 'contains' } }
          : null,
      allergensOf: () => ({ allergenSet: 'eu-14', ownAllergens: [] }),
    }
    const food = coldRice({ madeOf: ['mustard-seed'], touched: [] })
    expect(saidOfLot(demoStation, shownOf(food).label, []).unread).toEqual(['mustard-seed'])
    const { said } = lotFacts(demoStation, shownOf(food, house), NOW)
    expect(said.unread).toEqual([])
    expect(said.contains).toEqual([{ code: 'mustard', kinds: [] }])
    expect(said.notKnown).toContain('milk')
    const old = lotFacts(demoStation, shownOf(food, house), NOW, '2027-11-01').said
    expect(old.unread).toEqual(['Whole mustard'])
    const stranger = coldRice({ madeOf: ['mustard-seed', 'kelp'], touched: [] })
    const unread = lotFacts(demoStation, shownOf(stranger, house), NOW).said
    expect(unread.unread).toEqual(['Dried kelp'])
    expect(unread.contains).toEqual([{ code: 'mustard', kinds: [] }])
  })

  it('[PA40] whose label changed since is as unread', () => {
    const lot = shownOf(coldRice())
    const changed = {
      ...lot,
      relabelled: [{ ingredient: 'rice', name: 'rice', was: null, is: null, version: 4 }],
      label: { ...lot.label, madeOf: ['rice'] },
    }
    const said = wordsOf(larderLabelsEn.texts(lotFacts(demoStation, changed, NOW), 'x', WHERE))
    expect(said).toContain('NOT READ: ASK')
    expect(said).not.toContain(NOTHING_NAMED)
  })
})
