/** What a station lacks for a first order, for orders that keep something apart, and for printing. */

import { type Draft, isRecord, type Kind, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { notUnderstood } from '#lib/editor/not-understood.ts'
import type { Missing, MissingFor, Problem } from '#lib/editor/problem.ts'
import { openContacts } from '#lib/editor/proposed-contacts.ts'
import { type DraftLabels, ingredientsOf } from '#lib/editor/raw-document.ts'
import { takenBy } from '#lib/editor/uses.ts'
import { daysBetween } from '#lib/measure/civil.ts'
import { type PanDepthIn, type PanSize, panCapacity } from '#lib/measure/pans.ts'
import { ALLERGEN_SET_IDS, ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import { UNSAID_HOUSE } from '#lib/station/shapes/older-documents.ts'

const of = (
  code: string,
  costs: string,
  entity: Missing['entity'],
  id: string,
  field: string | null = null,
): Missing => ({ code, costs, entity, id, field })

const NEEDED: readonly (readonly [Kind, string])[] = [
  ['well', 'no-well'],
  ['pan', 'no-pan'],
  ['component', 'no-component'],
  ['item', 'no-item'],
]

const firstOrder = (draft: Draft, problems: readonly Problem[]): readonly Missing[] => [
  ...NEEDED.flatMap(([kind, code]) =>
    rowsOf(draft, kind).length === 0 ? [of(code, 'not-published', 'house', 'house')] : [],
  ),
  ...problems
    // An empty list is told above, by what it is a list of.
    .filter(({ code }) => code === 'missing' || code === 'no-density')
    .map(({ code, entity, id, field }) =>
      of(code, code === 'no-density' ? 'by-weight' : 'not-published', entity, id, field),
    ),
  ...rowsOf(draft, 'component')
    .filter(({ row }) => isRecord(row.food) && row.food.kind === null)
    .map(({ id }) => of('no-food-kind', 'highest-limit', 'component', id, 'food.kind')),
  ...rowsOf(draft, 'item')
    .filter((item) => takenBy(item).every((component) => component === ''))
    .map(({ id }) => of('takes-nothing', 'not-published', 'item', id, 'parts')),
]

const readAgainDays = (draft: Draft): number => {
  const days = draft.rows.house?.readAgainDays
  return typeof days === 'number' ? days : UNSAID_HOUSE.readAgainDays
}

/** A date that is none was never read, which the schema refuses too. */
const isOld = (readOn: string, today: string, days: number): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(readOn) && daysBetween(readOn, today) > days

const unreadLabels = (draft: Draft, labels: DraftLabels, today: string): readonly Missing[] => {
  const { house } = draft.rows
  const set = ALLERGEN_SET_IDS.find((one) => one === house?.allergenSet)
  const asked = [
    ...(set === undefined ? [] : ALLERGEN_SETS[set].groups.map(({ code }) => code)),
    ...textsIn(house, 'ownAllergens'),
  ]
  return ingredientsOf(draft).flatMap(({ id }) => {
    const label = labels[id]
    const readOn = textIn(label, 'readOn')
    if (readOn === '') return [of('label-unread', 'unknown', 'ingredient', id)]
    if (isOld(readOn, today, readAgainDays(draft)))
      return [of('label-old', 'unknown', 'ingredient', id)]
    const said = isRecord(label?.declarations) ? label.declarations : {}
    const unsaid = asked.filter((code) => (said[code] ?? 'unknown') === 'unknown')
    return unsaid.length === 0
      ? []
      : [of('not-said', 'unknown', 'ingredient', id, unsaid.join(' '))]
  })
}

/** What touches something is served to who keeps from that out of a protected back-up pan only. */
const withoutBackup = (draft: Draft): readonly Missing[] => {
  const touching = new Set(
    [
      ...rowsOf(draft, 'contact').filter(({ row }) => row.touches !== false),
      ...openContacts(draft),
    ].flatMap(({ row }) => textsIn(row, 'components')),
  )
  const guarded = new Set(
    rowsOf(draft, 'backup')
      .filter(({ row }) => row.protected === true)
      .map(({ row }) => textIn(row, 'component')),
  )
  return rowsOf(draft, 'component')
    .filter(({ id }) => touching.has(id) && !guarded.has(id))
    .map(({ id }) => of('no-protected-backup', 'caution', 'component', id))
}

const contactsUnsaid = (draft: Draft): readonly Missing[] => {
  if (draft.rows.house?.contactsSaid !== true)
    return [of('contacts-unsaid', 'no-keep-apart', 'house', 'house', 'contactsSaid')]
  return openContacts(draft).map(({ id }) => of('contact-open', 'touches', 'contact', id))
}

const printing = (draft: Draft): readonly Missing[] => [
  ...(isRecord(draft.rows.day) && typeof draft.rows.day.closes === 'string'
    ? []
    : [of('no-close', 'no-run-out', 'day', 'day', 'closes')]),
  ...rowsOf(draft, 'recipe').flatMap(({ id, row }) => [
    ...(textIn(row, 'yields') === '' ? [of('no-yield', 'not-scaled', 'recipe', id, 'yields')] : []),
    ...(Array.isArray(row.lines) && row.lines.length > 0
      ? []
      : [of('no-amounts', 'not-scaled', 'recipe', id, 'lines')]),
  ]),
  ...notUnderstood(draft),
  ...rowsOf(draft, 'pan').flatMap(({ id, row }) => [
    ...(row.tareMg === null ? [of('no-tare', 'not-weighed', 'pan', id, 'tareMg')] : []),
    ...(typeof row.capacityFlOz !== 'number' &&
    panCapacity(row.size as PanSize, row.depthIn as PanDepthIn) === null
      ? [of('no-capacity', 'overfull-unseen', 'pan', id, 'capacityFlOz')]
      : []),
  ]),
]

/**
 * What isn't there yet, each with what it costs. Nothing is refused for it but what is a problem too.
 * @param today civil date at the station
 */
export const missingFor = (
  draft: Draft,
  labels: DraftLabels,
  problems: readonly Problem[],
  today: string,
): MissingFor => ({
  firstOrder: firstOrder(draft, problems),
  keepApart: [
    ...unreadLabels(draft, labels, today),
    ...contactsUnsaid(draft),
    ...withoutBackup(draft),
  ],
  printing: printing(draft),
})
