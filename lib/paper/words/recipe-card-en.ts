/** The recipe card on paper in English; amounts are said as on the recipe's screen. */
import type { SaidOf } from '#lib/paper/allergens/said-of.ts'
import type { Asked as Text } from '#lib/paper/page/fit-text.ts'
import type { CardLimits } from '#lib/paper/recipe/card-limits.ts'
import type { Column, TableRow } from '#lib/paper/table/table-layout.ts'
import { sayAllergens } from '#lib/paper/words/labels-en.ts'
import { takenApart } from '#lib/recipes/kitchen-measures.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import type { Measure, ScaledLine } from '#lib/recipes/scaled-card.ts'
import type { RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { HOUR_MS, type Written } from '#lib/safety/limits.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const COLUMNS: readonly Column[] = [
  { title: recipeEn.amount, share: 0.27 },
  { title: recipeEn.part, share: 0.35 },
  { title: recipeEn.tell, share: 0.38 },
]

/** Off by more than this, what it is exactly stands beside what is measured out: as on the screen. */
const SEEN = 0.005

const heading = (text: string): TableRow => ({
  kind: 'over',
  isHeading: true,
  texts: [{ text, pt: 12, weight: 'bold' }],
})

const over = (...texts: readonly Text[]): readonly TableRow[] =>
  texts.some(({ text }) => text !== '') ? [{ kind: 'over', isHeading: false, texts }] : []

const exactly = ({ exact, shown, offBy }: Measure): string => {
  const isOff = exact.kind === 'volume' && shown.kind === 'us' && Math.abs(offBy) > SEEN
  const said = recipeEn.measure(shown, exact.kind)
  const apart = isOff ? recipeEn.takenApart(takenApart(exact.size)) : said
  return apart === said ? '' : recipeEn.exactly(apart)
}

const measure = (one: Measure): string => recipeEn.measure(one.shown, one.exact.kind)

const amountOf = ({ amount, line }: ScaledLine, isAsCard: boolean): readonly Text[] => {
  const small = (text: string): Text => ({ text, pt: 8.5, lines: 2 })
  switch (amount.kind) {
    case 'to-taste':
      return [{ text: recipeEn.toTaste, pt: 11, weight: 'bold' }]
    case 'not-understood':
      return [
        { text: line.typed === '' ? '–' : line.typed, pt: 11, weight: 'bold', lines: 2 },
        small(recipeEn.problem(amount)),
      ]
    case 'measured':
      return [
        {
          text: isAsCard ? line.typed : measure(amount.measure),
          pt: 11,
          weight: 'bold',
          lines: 2,
        },
        ...(isAsCard
          ? []
          : [
              small(exactly(amount.measure)),
              ...(amount.also === null
                ? []
                : [small(`${recipeEn.alsoAs}: ${measure(amount.also)}`)]),
              small(recipeEn.asTyped(line.typed)),
            ]),
        ...(amount.measure.shown.kind === 'cans'
          ? [small(recipeEn.opened(amount.measure.shown.open))]
          : []),
      ]
  }
}

const lineRow = (line: ScaledLine, isAsCard: boolean): TableRow => ({
  kind: 'cells',
  cells: [
    amountOf(line, isAsCard),
    [
      { text: line.name, pt: 11, lines: 2 },
      ...(line.line.isRecipe ? [{ text: recipeEn.recipePart, pt: 8.5 }] : []),
    ],
    [
      ...(line.buy === null ? [] : [{ text: `${recipeEn.buy}: ${measure(line.buy)}`, pt: 9 }]),
      ...(line.byTaste === null || line.byTaste === 'to-taste'
        ? []
        : [{ text: recipeEn.byTaste(line.byTaste), pt: 9.5, weight: 'bold' as const, lines: 3 }]),
    ],
  ],
})

const enough = ({ checked }: RecipeSheet, scoop: number | null, level: number | null): string => {
  switch (checked.code) {
    case 'checked':
      return recipeEn.portionTotal(
        scoop,
        level ?? 1,
        portionTotal(checked.portion, checked.portions),
      )
    case 'not-served':
      return recipeEn.notServed
    case 'no-portion':
      return recipeEn.noPortion
    case 'no-size':
      return recipeEn.noSize
    case 'no-density':
      return recipeEn.noDensity
    case 'no-yield':
      return recipeEn.noYieldYet
    case 'no-count':
      return recipeEn.notCount
    case 'under-one':
      return recipeEn.underOne
  }
}

const written = (where: Written): string => `(${safetyWords.paragraph(where)})`

const limitRows = (limits: CardLimits, scale: Scale): readonly TableRow[] => {
  const line = (text: string): Text => ({ text, pt: 10, lines: 2 })
  const { cook, hold, cool, reheat } = limits
  return over(
    ...(cook === null ? [] : [line(`Cook to ${safetyWords.heat(cook, scale)} ${written(cook)}`)]),
    ...(hold === null
      ? [line('Held dry.')]
      : [line(`Hold at ${safetyWords.limit(hold, scale)} ${written(hold)}`)]),
    ...cool.map(({ to, within }) =>
      line(
        `Cool to ${safetyWords.limit(to, scale)} within ${within.withinMs / HOUR_MS} h of its start ${written(within)}`,
      ),
    ),
    ...(reheat === null
      ? []
      : [line(`Reheat to ${safetyWords.heat(reheat, scale)} ${written(reheat)}`)]),
  )
}

export interface CardOnPaper {
  readonly sheet: RecipeSheet
  /** As it is typed under Make; '' as the card stands. */
  readonly make: string
  readonly yields: string
  readonly scoop: number | null
  readonly level: number | null
  /** null: no published pan holds it, so nobody said how it is cooked and held. */
  readonly limits: CardLimits | null
  /** null: nothing is published whose labels could be asked. */
  readonly said: SaidOf | null
  readonly scale: Scale
}

const rows = (card: CardOnPaper): readonly TableRow[] => {
  const { sheet, make, limits, said, scale } = card
  const isAsCard = sheet.factor.over === sheet.factor.under
  const made = sheet.made === null ? '' : `Makes ${recipeEn.amountOf(sheet.made)}`
  const wrong = [sheet.yieldProblem, sheet.wanted.ok ? null : sheet.wanted].flatMap((problem) =>
    problem === null ? [] : [recipeEn.problem(problem)],
  )
  return [
    ...over(
      {
        text: isAsCard
          ? recipeEn.asCard(card.yields)
          : [make, recipeEn.factor(sheet.factor)].filter((one) => one !== '').join(': '),
        pt: 12,
        weight: 'bold',
        lines: 2,
      },
      { text: made, pt: 11 },
      { text: enough(sheet, card.scoop, card.level), pt: 11, weight: 'bold', lines: 2 },
      ...sheet.notInStep.map(
        (one): Text => ({
          text: recipeEn.notInStep(one),
          pt: 9.5,
          weight: 'bold',
          lines: 2,
        }),
      ),
      ...wrong.map((text): Text => ({ text, pt: 10, weight: 'bold', lines: 3 })),
    ),
    heading(recipeEn.lines),
    ...sheet.lines.map((line) => lineRow(line, isAsCard)),
    heading('Cook and hold'),
    ...(limits === null
      ? over({ text: 'No pan that is published holds it: ask the person in charge.', pt: 10 })
      : limitRows(limits, scale)),
    heading('Allergens, by the labels'),
    ...(said === null
      ? over({ text: 'NOT READ: ASK. Nothing is published here yet.', pt: 11, weight: 'bold' })
      : over(
          ...sayAllergens({
            ...said,
            touches: [],
            touchesUnknown: [],
            contactKnown: true,
          }).map(
            ({ lead, items, weight, pt }): Text => ({
              text: [lead, items.join(', ')].filter((one) => one !== '').join(' '),
              pt,
              weight,
              lines: 3,
            }),
          ),
        )),
  ]
}

export const recipeCardEn = {
  noTitle: 'Recipe card',
  columns: COLUMNS,
  rows,
  draft: 'As the set-up is now',
  foot: `${recipeEn.rounding} Local code and the certified person in charge decide.`,
  toRecipe: 'To the recipe',
  noSuch: recipeEn.noSuch,
} as const
