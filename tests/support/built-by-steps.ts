/** Stations that somebody sets up by the editor's own steps, with slips on the way. */
import fc from 'fast-check'
import { applyStep } from '#lib/editor/apply-step.ts'
import { emptyStation } from '#lib/editor/begin.ts'
import { type Draft, type Kind, type Row, rowsOf, textIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
import { problemsOf } from '#lib/editor/problems-of.ts'
import { confirmSteps, openContacts } from '#lib/editor/proposed-contacts.ts'
import type { Step } from '#lib/editor/step.ts'

/** What one act of the person is, and the numbers that choose what it is about. */
export interface Act {
  readonly act: (typeof ACTS)[number]
  readonly name: string
  readonly which: readonly number[]
}

const ACTS = [
  ...['buy', 'cook', 'hold', 'fill', 'sell', 'move', 'rename', 'remove', 'price', 'guard'],
  'touch',
] as const

export const acts = fc.array(
  fc.record({
    act: fc.constantFrom(...ACTS),
    name: fc.constantFrom(
      ...[
        'Rice',
        'Black beans',
        'Pickled red onions',
        'Crème fraîche',
        '白米飯',
        '7 grains',
        'Борщ',
      ],
    ),
    which: fc.array(fc.nat({ max: 1_000 }), { minLength: 6, maxLength: 6 }),
  }),
  { minLength: 5, maxLength: 60 },
)

const pick = <One>(list: readonly One[], which: number | undefined): One | undefined =>
  list[(which ?? 0) % Math.max(1, list.length)]

const HELD = ['hot', 'cold', 'dry'] as const
const SIZES = ['half', 'third', 'sixth', 'ninth', 'quarter'] as const

const portionBy = (which: number): Row =>
  pick<Row>(
    [
      { tool: 'scoop', number: 16, level: 1, gPerCup: 150, source: 'ten level scoops weighed' },
      { tool: 'tongs', grams: 40, source: 'weighed ten times' },
      { tool: 'piece', pieces: 1 },
      { tool: 'ladle', flOz: 2, level: 1, gPerCup: 230, source: 'one full pan weighed' },
      { tool: 'bottle', squeezes: 2, weighed: { squeezes: 10, grams: 60 } },
    ],
    which,
  ) ?? {}

const put = (entity: Step['entity'], id: string, fields: Row): Step => ({
  do: 'put',
  entity,
  id,
  fields,
})

/** A component with its pan, in a well that it is held by. */
const fill = (draft: Draft, name: string, [a = 0, b = 0, c = 0, d = 0]: readonly number[]) => {
  const well = pick(rowsOf(draft, 'well'), a)
  const ingredient = pick(rowsOf(draft, 'ingredient'), b)
  const recipe = pick(rowsOf(draft, 'recipe'), c)
  if (!well || !ingredient) return []
  const id = newId(draft, 'component', name)
  const held = textIn(well.row, 'held')
  // Cooked food in a cold pan was cooled before, which an opening has nobody to do.
  const kind = held === 'hot' ? (pick([null, 'plant', 'ready'], d) ?? null) : 'ready'
  const component = put('component', id, {
    name,
    held,
    portion: portionBy(d),
    food: { kind, cookedIn: 'usual', roast: false, reheatable: true },
    ingredients: recipe && c % 2 === 0 ? [] : [ingredient.id],
    recipes: recipe && c % 2 === 0 ? [recipe.id] : [],
    extraCents: a % 200,
  })
  const pan = put('pan', newId(draft, 'pan', `pan ${id}`), {
    well: well.id,
    component: id,
    size: pick(SIZES, b) ?? 'third',
    depthIn: pick([2.5, 4], c) ?? 4,
  })
  return [component, pan]
}

const sell = (draft: Draft, name: string, [a = 0, b = 0, c = 0]: readonly number[]) => {
  const inPans = [...new Set(rowsOf(draft, 'pan').map(({ row }) => textIn(row, 'component')))]
  const heart = pick(inPans, a)
  if (heart === undefined) return []
  const other = pick(inPans, b)
  const base = pick(inPans, c)
  const isFree = (one: string | undefined): one is string => one !== undefined && one !== heart
  return [
    put('item', newId(draft, 'item', name), {
      name: `${name} wrap`,
      priceCents: a,
      heart,
      base: isFree(base) && base !== other && c % 3 === 0 ? { choices: [base], usual: base } : null,
      parts: [
        { component: heart, usual: 'in', required: true },
        ...(isFree(other) ? [{ component: other, usual: 'no', required: false }] : []),
      ],
    }),
  ]
}

const stepsOf = (draft: Draft, { act, name, which }: Act): readonly Step[] => {
  const [a = 0, b = 0, c = 0] = which
  const kind = pick<Kind>(['item', 'component', 'recipe', 'ingredient', 'pan', 'well'], a) ?? 'item'
  const one = pick(rowsOf(draft, kind), b)
  switch (act) {
    case 'buy':
      return [put('ingredient', newId(draft, 'ingredient', name), { name, maker: 'A mill' })]
    case 'cook': {
      const ingredient = pick(rowsOf(draft, 'ingredient'), a)
      const inner = pick(rowsOf(draft, 'recipe'), b)
      if (!ingredient) return []
      const recipes = inner && c % 2 === 0 ? [inner.id] : []
      return [
        put('recipe', newId(draft, 'recipe', name), {
          name,
          ingredients: [ingredient.id],
          recipes,
          lines: [{ of: ingredient.id, typed: '2 #10 cans' }],
          yields: 'serves 24',
        }),
      ]
    }
    case 'hold':
      return [put('well', newId(draft, 'well', name), { held: pick(HELD, a) ?? 'cold' })]
    case 'fill':
      return fill(draft, name, which)
    case 'sell':
      return sell(draft, name, which)
    case 'move': {
      const before = pick(rowsOf(draft, kind), c)
      if (!one || before?.id === one.id) return []
      const well = kind === 'pan' ? before && textIn(before.row, 'well') : undefined
      return [
        {
          do: 'move',
          entity: kind,
          id: one.id,
          before: before?.id ?? null,
          ...(well ? { well } : {}),
        },
      ]
    }
    case 'rename':
      return one && kind !== 'pan' && kind !== 'well'
        ? [{ do: 'rename', entity: kind, id: one.id, name }]
        : []
    case 'remove':
      return one ? [{ do: 'remove', entity: kind, id: one.id }] : []
    case 'price': {
      const item = pick(rowsOf(draft, 'item'), a)
      return item ? [put('item', item.id, { priceCents: b })] : []
    }
    case 'guard': {
      const component = pick(rowsOf(draft, 'component'), a)
      if (!component) return []
      const held = textIn(component.row, 'held')
      const id = newId(draft, 'backup', `back up ${component.id}`)
      const kept = held === 'dry' ? 'boxed' : held
      return [put('backup', id, { component: component.id, protected: true, kept })]
    }
    case 'touch':
      return confirmSteps(draft, a % 2 === 0 ? [] : openContacts(draft).map(({ id }) => id))
  }
}

export const applied = (draft: Draft, steps: readonly Step[]): Draft =>
  steps.reduce((sofar, step) => {
    const stepped = applyStep(sofar, step)
    return stepped.ok ? stepped.draft : sofar
  }, draft)

/** What the person does about what is told, until nothing is; at most so many times. */
const mended = (draft: Draft): Draft => {
  let now = draft
  for (let times = 0; times < 200; times += 1) {
    const [problem] = problemsOf(now, {})
    if (problem === undefined) return now
    const { code, entity, id, most = 1 } = problem
    if (code === 'pans-dont-fit') {
      const last = rowsOf(now, 'pan')
        .filter(({ row }) => row.well === id)
        .at(-1)
      const well = newId(now, 'well', 'one more')
      const held = textIn(now.rows[`well:${id}`], 'held')
      now = applied(now, [
        put('well', well, { held }),
        { do: 'move', entity: 'pan', id: last?.id ?? '', before: null, well },
      ])
    } else if (code === 'held-otherwise') {
      const held = textIn(now.rows[`component:${id}`], 'held')
      const pan = rowsOf(now, 'pan').find(
        ({ row }) =>
          row.component === id &&
          textIn(now.rows[`well:${row.well}`], 'held') === problem.named?.[0],
      )
      const well = newId(now, 'well', 'held as it needs')
      now = applied(now, [
        put('well', well, { held }),
        { do: 'move', entity: 'pan', id: pan?.id ?? '', before: null, well },
      ])
    } else if (code === 'usual-overfull')
      now = applied(now, [put('pan', id, { usualPortions: Math.max(1, most) })])
    else if (code === 'too-few' && entity === 'well')
      now = applied(now, [{ do: 'remove', entity: 'well', id }])
    else if (code === 'no-pan') now = applied(now, [{ do: 'remove', entity: 'item', id }])
    else if (code === 'too-few')
      now = applied(now, [
        put('ingredient', newId(now, 'ingredient', 'Flour'), { name: 'Flour' }),
        put('well', newId(now, 'well', 'first'), { held: 'cold' }),
        ...fill(
          applied(now, [
            put('ingredient', newId(now, 'ingredient', 'Flour'), { name: 'Flour' }),
            put('well', newId(now, 'well', 'first'), { held: 'cold' }),
          ]),
          'Bread',
          [1_000, 1, 1, 1],
        ),
      ])
    else throw new Error(`nobody knows what to do about ${JSON.stringify(problem)}`)
    if (rowsOf(now, 'item').length === 0) now = applied(now, sell(now, 'First', [0, 0, 1]))
  }
  throw new Error(`never mended: ${JSON.stringify(problemsOf(now, {}))}`)
}

/** A station as it is after all of that: nothing is wrong with it. */
export const builtBySteps = (done: readonly Act[]): Draft =>
  mended(
    done.reduce(
      (draft, act) => applied(draft, stepsOf(draft, act)),
      emptyStation('built', 'Built line', { timeZone: 'America/Chicago', locale: 'en-US' }),
    ),
  )
