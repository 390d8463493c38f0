/** Labels of the larder's lots in English. */

import type { LabelTexts } from '#lib/paper/labels/label-texts.ts'
import type { LotFacts } from '#lib/paper/labels/lot-facts.ts'
import {
  DEMO,
  discardCell,
  footAgain,
  labelPieces,
  type SaidWhere,
  sayAllergens,
  sayCooling,
} from '#lib/paper/words/labels-en.ts'
import { sayPieces, sayWeight } from '#lib/words/amounts-en.ts'
import { list } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'

const WHERE: Readonly<Record<NonNullable<LotFacts['place']>['where'], string>> = {
  'walk-in': 'Walk-in',
  'reach-in': 'Reach-in',
  freezer: 'Freezer',
}

const { cell, row, sentence, initials, part, moment } = labelPieces

const daysOnceThawed = (days: number, useBy: string | null): string => {
  const never = useBy === null ? '' : `, never past the maker’s date, ${sayDate(useBy)}`
  return `Frozen: ${days === 1 ? '1 day' : `${days} days`} from the day it is thawed, that day with it${never}.`
}

/** `cafe`: the house, or the station where nobody named one. */
const texts = (lot: LotFacts, cafe: string, where: SaidWhere): LabelTexts => {
  const { timeZone } = where
  const amount = lot.unit === 'mg' ? sayWeight(lot.amount) : sayPieces(lot.amount)
  const { place, periods } = lot
  return {
    id: `lot/${lot.id}`,
    name: lot.name,
    about: [...(where.isDemo ? [DEMO] : []), cafe, amount].filter((one) => one !== '').join(' · '),
    drawn: null,
    parts: [
      row(
        periods.length > 0
          ? cell('Period', { value: list(periods, 'or') })
          : cell('Period', { blank: 'hour' }),
        place === null
          ? cell('Shelf', { blank: 'words' })
          : cell('Shelf', { value: `${WHERE[place.where]}, ${place.shelf} from the top` }),
      ),
      ...sayAllergens(lot.said),
      ...(lot.cooling === null ? [] : sayCooling(lot.cooling, where)),
      ...(lot.daysLeft === null
        ? []
        : sentence(daysOnceThawed(lot.daysLeft, lot.useBy), { weight: 'bold' })),
      ...(lot.stoodOpen
        ? sentence('It was open on the line: never a protected back-up.', { pt: 9 })
        : []),
    ],
    foot: [
      row(
        lot.madeAt === null
          ? cell('Made', { blank: 'moment' })
          : cell('Made', { value: moment(lot.madeAt, timeZone) }),
        cell('Set aside', { value: moment(lot.setAsideAt, timeZone) }),
        initials,
      ),
      row(discardCell(lot.discard, timeZone)),
    ],
    footAgain: footAgain(lot, timeZone),
    part,
  }
}

export const larderLabelsEn = {
  title: 'Larder labels',
  lots: 'What is in the larder',
  empty: 'Nothing is in the larder.',
  texts,
} as const
