/** An item while it is set up: what it takes of each pan. */
import { isRecord, type Json, type Row, recordsIn, textIn, textsIn } from '#lib/editor/draft.ts'

/** What an item says of one component. */
export type Mark = 'heart' | 'in' | 'side' | 'no' | 'base' | 'not'

type Usual = 'in' | 'side' | 'no'

const USUAL: readonly Usual[] = ['in', 'side', 'no']

const partOf = (item: Row, component: string): Row | undefined =>
  recordsIn(item, 'parts').find((part) => part.component === component)

const baseOf = (item: Row): Row | null => (isRecord(item.base) ? item.base : null)

export const choicesOf = (item: Row): readonly string[] =>
  textsIn(baseOf(item) ?? undefined, 'choices')

export const markOf = (item: Row, component: string): Mark => {
  if (choicesOf(item).includes(component)) return 'base'
  const part = partOf(item, component)
  if (!part) return 'not'
  if (textIn(item, 'heart') === component && part.usual === 'in') return 'heart'
  return USUAL.find((one) => one === part.usual) ?? 'not'
}

const AFTER: Readonly<Record<Mark, readonly (Usual | null)[]>> = {
  not: ['in'],
  in: ['side', 'no'],
  heart: ['side', 'no'],
  side: ['no'],
  no: [null],
  base: [null],
}

const sorted = (parts: readonly Row[], line: readonly string[]): readonly Row[] =>
  parts.toSorted(
    (one, other) =>
      line.indexOf(textIn(one, 'component')) - line.indexOf(textIn(other, 'component')),
  )

/** What of an item changes, as fields; null takes a base away. */
export type ItemFields = Readonly<Record<string, Json>>

/**
 * One tap on a pan: not part of it, in it, on the side where there are cups, only if asked.
 *
 * @param line components in the order of their pans, in which parts are kept
 */
export const tapped = (
  item: Row,
  component: string,
  hasCups: boolean,
  line: readonly string[],
): ItemFields => {
  const mark = markOf(item, component)
  if (mark === 'base') return withBase(item, component)
  const next = AFTER[mark].find((one) => one !== 'side' || hasCups) ?? null
  const others = recordsIn(item, 'parts').filter((part) => part.component !== component)
  const heart = textIn(item, 'heart')
  if (next === null) {
    const first = others.find((part) => part.usual === 'in')
    const stays = heart !== component
    return {
      parts: others,
      ...(stays ? {} : { heart: first ? textIn(first, 'component') : '' }),
    }
  }
  const becomesHeart = next === 'in' && heart === ''
  const before = partOf(item, component)
  const required = becomesHeart || (next === 'in' && before?.required === true)
  const parts = sorted([...others, { component, usual: next, required }], line)
  if (becomesHeart) return { parts, heart: component }
  if (heart !== component || next === 'in') return { parts }
  const other = parts.find((part) => part.usual === 'in')
  return { parts, heart: other ? textIn(other, 'component') : component }
}

/** The item named for another of its parts, which then can't be left out. */
export const withHeart = (item: Row, component: string): ItemFields => ({
  heart: component,
  parts: recordsIn(item, 'parts').map((part) =>
    part.component === component ? { ...part, usual: 'in', required: true } : part,
  ),
})

/** A component that the guest may choose as base, or no more. The first one is the usual. */
export const withBase = (item: Row, component: string): ItemFields => {
  const now = choicesOf(item)
  const choices = now.includes(component)
    ? now.filter((one) => one !== component)
    : [...now, component]
  const usual = textIn(baseOf(item) ?? undefined, 'usual')
  const [first] = choices
  const heart = textIn(item, 'heart')
  return {
    base: first === undefined ? null : { choices, usual: choices.includes(usual) ? usual : first },
    parts: recordsIn(item, 'parts').filter((part) => part.component !== component),
    ...(heart === component ? { heart: '' } : {}),
  }
}

export const withUsual = (item: Row, component: string): ItemFields => ({
  base: { choices: choicesOf(item), usual: component },
})

/** Whether a part can be left out, the other way round. */
export const withRequired = (item: Row, component: string): ItemFields => ({
  parts: recordsIn(item, 'parts').map((part) =>
    part.component === component ? { ...part, required: part.required !== true } : part,
  ),
})
