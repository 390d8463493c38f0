/** The recipe card on paper in English; amounts are said as on the recipe's screen. */
import type { Vessel } from '#lib/editor/cards/card-box.ts'
import type { SaidOf } from '#lib/paper/allergens/said-of.ts'
import type { Asked as Text } from '#lib/paper/page/fit-text.ts'
import type { AskedSection } from '#lib/paper/page/list-layout.ts'
import { type AskedRow, plainRow } from '#lib/paper/page/list-row.ts'
import type { CardLimits } from '#lib/paper/recipe/card-limits.ts'
import { sayAllergens } from '#lib/paper/words/labels-en.ts'
import { takenApart } from '#lib/recipes/kitchen-measures.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import type { Measure, ScaledLine } from '#lib/recipes/scaled-card.ts'
import type { RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { HOUR_MS, type Written } from '#lib/safety/limits.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { measuredEn } from '#lib/words/recipe/measured-en.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const SHARES = [0.27, 0.35, 0.38] as const

/** Off by more than this, what it is exactly stands beside what is measured out: as on the screen. */
const SEEN = 0.005

const over = (id: string, ...texts: readonly Text[]): readonly AskedRow[] =>
  texts.some(({ text }) => text !== '') ? [plainRow(id, texts)] : []

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
        ...(line.typed === ''
          ? [small(recipeEn.asTyped(''))]
          : [
              { text: line.typed, pt: 11, weight: 'bold' as const, lines: 2 },
              small(recipeEn.problem(amount)),
            ]),
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

const lineRow = (line: ScaledLine, isAsCard: boolean, at: number): AskedRow =>
  plainRow(
    `line.${at}`,
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
  )

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

/** What own batches made of it, and that the amounts below go by the card; '' where none was measured. */
const batches = ({ checked }: RecipeSheet): string =>
  checked.code === 'checked' && checked.byBatches !== null
    ? `${measuredEn.byBatches(checked.byBatches)} ${measuredEn.byCard}`
    : ''

const written = (where: Written): string => `(${safetyWords.paragraph(where)})`

const limitRows = (limits: CardLimits, scale: Scale): readonly AskedRow[] => {
  const line = (text: string): Text => ({ text, pt: 10, lines: 2 })
  const { cook, hold, cool, reheat } = limits
  return over(
    'limits',
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
  /** What it is made in; null where nobody said. */
  readonly vessel: Pick<Vessel, 'name' | 'holds'> | null
  /** How it is made, in order. */
  readonly steps: readonly string[]
  /** null: no published pan holds it, so nobody said how it is cooked and held. */
  readonly limits: CardLimits | null
  /** null: nothing is published whose labels could be asked. */
  readonly said: SaidOf | null
  readonly scale: Scale
}

/** One that goes on on another line begins under its first word's line: its number stands before it. */
const stepRow = (text: string, at: number): AskedRow =>
  plainRow(`step.${at + 1}`, [{ text: `${at + 1}.\u00a0 ${text}`, pt: 11.5, lines: 4 }])

const makes = ({ sheet, make, yields, scoop, level, vessel }: CardOnPaper): readonly AskedRow[] => {
  const isAsCard = sheet.factor.over === sheet.factor.under
  const { fits, made } = sheet
  const wrong = [sheet.yieldProblem, sheet.wanted.ok ? null : sheet.wanted].flatMap((problem) =>
    problem === null ? [] : [recipeEn.problem(problem)],
  )
  const factor = [make, recipeEn.factor(sheet.factor)].filter((one) => one !== '').join(': ')
  return over(
    'makes',
    { text: isAsCard ? recipeEn.asCard(yields) : factor, pt: 13, weight: 'bold', lines: 2 },
    { text: made === null ? '' : `Makes ${recipeEn.amountOf(made)}`, pt: 12 },
    { text: enough(sheet, scoop, level), pt: 12, weight: 'bold', lines: 2 },
    { text: batches(sheet), pt: 10, lines: 2 },
    {
      text: [
        vessel === null
          ? ''
          : `${recipeEn.vessel}: ${recipeEn.vesselWith(vessel.name, vessel.holds)}.`,
        fits?.ok ? recipeEn.batches(fits.count, recipeEn.amountOf(fits.each)) : '',
      ]
        .filter((one) => one !== '')
        .join(' '),
      ...({ pt: 11, weight: 'bold', lines: 2 } as const),
    },
    ...sheet.notInStep.map(
      (one): Text => ({ text: recipeEn.notInStep(one), pt: 9.5, weight: 'bold', lines: 2 }),
    ),
    ...wrong.map((text): Text => ({ text, pt: 10, weight: 'bold', lines: 3 })),
  )
}

const allergens = ({ said }: CardOnPaper): readonly AskedRow[] =>
  said === null
    ? over('allergens', {
        text: 'NOT READ: ASK. Nothing is published here yet.',
        pt: 11,
        weight: 'bold',
      })
    : over(
        'allergens',
        ...sayAllergens({ ...said, touches: [], touchesUnknown: [], contactKnown: true }).map(
          ({ lead, items, weight, pt }): Text => ({
            text: [lead, items.join(', ')].filter((one) => one !== '').join(' '),
            ...{ pt, weight, lines: 3 },
          }),
        ),
      )

const sections = (card: CardOnPaper): readonly AskedSection[] => {
  const { sheet, steps, limits, scale } = card
  const isAsCard = sheet.factor.over === sheet.factor.under
  const section = (title: string, rows: readonly AskedRow[]): AskedSection => ({
    ...{ title, rows, again: title === '' ? '' : `… ${title}`, note: '' },
  })
  return [
    section('', makes(card)),
    section(
      recipeEn.lines,
      sheet.lines.map((line, at) => lineRow(line, isAsCard, at)),
    ),
    ...(steps.length === 0 ? [] : [section(recipeEn.method.title, steps.map(stepRow))]),
    section(
      'Cook and hold',
      limits === null
        ? over('limits', {
            text: 'No pan that is published holds it: ask the person in charge.',
            pt: 10,
          })
        : limitRows(limits, scale),
    ),
    section('Allergens, by the labels', allergens(card)),
  ]
}

export const recipeCardEn = {
  noTitle: 'Recipe card',
  shares: SHARES,
  headings: [recipeEn.amount, recipeEn.part, recipeEn.tell],
  sections,
  draft: 'As the set-up is now',
  foot: `${recipeEn.rounding} Local code and the certified person in charge decide.`,
  toRecipe: 'To the recipe',
  noSuch: recipeEn.noSuch,
} as const
