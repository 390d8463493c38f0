/** Why something doesn't fit a guest, in English. Unknown is never said as free. */

import type { FindingTold } from '#lib/needs/finding-told.ts'
import type { Why } from '#lib/needs/judge.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import type { ContactKind } from '#lib/station/station-document.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { foodOf, needName } from '#lib/words/service-en.ts'

/** A name inside a sentence: "Herb chicken" becomes "herb chicken", "BBQ pork" stays. */
export const inSentence = (name: string): string =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name

export const startingWith = (words: string): string =>
  words.charAt(0).toUpperCase() + words.slice(1)

/** "contains milk", "may contain milk", "isn’t vegan". */
const declares = (need: NeedCode, why: Why, many: boolean): string => {
  const food = foodOf(need)
  if (why === 'may-contain')
    return food === null ? `may not be ${needName(need)}` : `may contain ${food}`
  if (food === null) return `${many ? 'aren’t' : 'isn’t'} ${needName(need)}`
  return `${many ? 'contain' : 'contains'} ${food}`
}

/** "whether it contains milk", "that it is vegan" */
const whether = (need: NeedCode, it: string, many: boolean): string => {
  const food = foodOf(need)
  if (food === null) return `that ${it} ${many ? 'are' : 'is'} ${needName(need)}`
  return `whether ${it} ${many ? 'contain' : 'contains'} ${food}`
}

const TOUCHING: Readonly<Record<ContactKind, string>> = {
  scoop: 'shares a scoop with',
  board: 'is cut on the same board as',
  griddle: 'is warmed on the same griddle as',
  press: 'is pressed in the same press as',
  toaster: 'goes through the same toaster as',
  fryer: 'is fried in the same fryer as',
  warmer: 'is held in the same warmer as',
  beside: 'is next to',
  'reached-over': 'is reached over together with',
}

const TOUCHING_MANY: Readonly<Record<ContactKind, string>> = {
  scoop: 'share a scoop with',
  board: 'are cut on the same board as',
  griddle: 'are warmed on the same griddle as',
  press: 'are pressed in the same press as',
  toaster: 'go through the same toaster as',
  fryer: 'are fried in the same fryer as',
  warmer: 'are held in the same warmer as',
  beside: 'are next to',
  'reached-over': 'are reached over together with',
}

const sayContact = (told: FindingTold, contact: NonNullable<FindingTold['contact']>): string => {
  const many = told.isPlural
  const touching = many ? TOUCHING_MANY : TOUCHING
  const by =
    contact.by === null
      ? `${many ? 'share' : 'shares'} tools or a place on the line with`
      : touching[contact.by]
  const other = inSentence(contact.component)
  const manyOther = contact.isPlural
  const what =
    contact.declared === 'unknown'
      ? `and nobody knows ${whether(told.need, manyOther ? 'they' : 'it', manyOther)}`
      : `which ${declares(told.need, contact.declared === 'contains' ? 'contains' : 'may-contain', manyOther)}`
  return `${told.component} ${by} ${other}, ${what}`
}

/** "its labels name no milk": never that it is free of it. */
const nameNone = (need: NeedCode, many: boolean): string =>
  `${many ? 'their' : 'its'} labels name no ${foodOf(need) ?? needName(need)}`

/** One finding as a sentence without its full stop, down to the ingredient. */
export const sayFinding = (told: FindingTold): string => {
  const { component, ingredient, need, why, contact, stale } = told
  if (contact && why === 'soiled')
    return `A scoop of ${inSentence(contact.component)} went into ${inSentence(component)}, so it may contain ${foodOf(need) ?? `what isn’t ${needName(need)}`}`
  if (contact) return sayContact(told, contact)
  const it = ingredient ?? component
  const many = told.isPlural
  const before = ingredient === null ? '' : `${component}: `
  const named = ingredient === null ? it : inSentence(it)
  if (why === 'contact-unknown')
    return `Nobody has said what ${inSentence(component)} can touch on the line`
  if (stale)
    return `${startingWith(named)}: ${many ? 'their' : 'its'} label was read on ${sayDate(stale.readOn)}, over ${stale.days} days ago: read it again`
  if (why === 'unknown')
    return `${before}${ingredient === null ? 'N' : 'n'}ot known ${whether(need, inSentence(it), many)}: read the label first`
  if (why === 'not-listed') return `${component}: ${nameNone(need, many)}`
  if (why === 'may-contain')
    return `${before}${ingredient === null ? 'T' : 't'}he label of ${inSentence(it)} warns: ${declares(need, why, many)}`
  return `${before}${named} ${declares(need, why, many)}`
}

/** As it stands in a row: "Tuna salad touches toasted almonds"; `many`: its name is plural. */
export const rowFinding = (
  component: string,
  many: boolean,
  need: NeedCode,
  why: Why,
  touches: string | null,
): string => {
  switch (why) {
    case 'contains':
    case 'may-contain':
      return `${component} ${declares(need, why, many)}`
    case 'contact':
      return `${component} ${many ? 'touch' : 'touches'} ${inSentence(touches ?? '')}`
    case 'soiled':
      return `a scoop of ${inSentence(touches ?? '')} went into ${inSentence(component)}`
    case 'not-listed':
      return `${component}: ${nameNone(need, many)}`
    case 'unknown':
    case 'contact-unknown':
      return `${component}, ${shortFinding(many, need, why, touches)}`
  }
}

/** As it stands in a pan: a word or three. */
export const shortFinding = (
  many: boolean,
  need: NeedCode,
  why: Why,
  touches: string | null,
): string => {
  const food = foodOf(need)
  switch (why) {
    case 'contains':
    case 'may-contain':
      return declares(need, why, many)
    case 'unknown':
      return `${food ?? needName(need)}: not known`
    case 'not-listed':
      return `${food ?? needName(need)}: not listed`
    case 'soiled':
      return `${inSentence(touches ?? '')} went in`
    case 'contact':
      return `${many ? 'touch' : 'touches'} ${inSentence(touches ?? '')}`
    case 'contact-unknown':
      return 'contact not known'
  }
}

/** "since it contains milk", of one or more components. */
export const since = (
  need: NeedCode,
  why: Why,
  many: boolean,
  touches: string | null = null,
): string => {
  const it = many ? 'they' : 'it'
  switch (why) {
    case 'contains':
    case 'may-contain':
      return `since ${it} ${declares(need, why, many)}`
    case 'unknown':
      return `since we don’t know ${whether(need, it, many)}`
    case 'not-listed':
      return `since ${nameNone(need, many)}, and no more is known`
    case 'soiled':
      return `since a scoop of ${inSentence(touches ?? '')} went in`
    case 'contact':
      return `since ${it} can touch ${inSentence(touches ?? '')} on the line`
    case 'contact-unknown':
      return `since we don’t know what ${it} can touch`
  }
}
