/** What a refused order lacks, told build by build. */

import { type Draft, isKept } from '#lib/rooms/orders/facts/draft.ts'
import type { Lack, Refusal } from '#lib/service/refusal.ts'
import { LETTERS } from '#lib/service/tickets.ts'
import { findItem } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What the student can do about one. */
export type LackWay = 'leave-out' | 'other-base' | 'other-item'

export interface BuildLacks {
  readonly letter: string
  /** The item it is of; null where the order isn't known any more. */
  readonly item: string | null
  readonly lacks: readonly { readonly lack: Lack; readonly way: LackWay }[]
}

const wayOf = (station: StationDocument, item: string | null, lack: Lack): LackWay => {
  const found = item === null ? undefined : findItem(station, item)
  if (lack.code === 'not-selling' && lack.what === 'item') return 'other-item'
  const component = lack.code === 'not-selling' ? lack.id : lack.component
  if (found?.base?.choices.includes(component))
    return found.base.choices.length > 1 ? 'other-base' : 'other-item'
  const part = found?.parts.find((one) => one.component === component)
  return found && part && isKept(found, part) ? 'other-item' : 'leave-out'
}

/** Build by build in their order; null where a refusal isn't of several lacks. */
export const lacksTold = (
  station: StationDocument,
  refusal: Refusal,
  drafts: readonly Draft[],
): readonly BuildLacks[] | null => {
  if (refusal.code !== 'lacks') return null
  const letters = [...new Set(refusal.lacks.map(({ letter }) => letter))]
  return letters.map((letter) => {
    // A change has one build, whatever its letter.
    const index = drafts.length === 1 ? 0 : LETTERS.indexOf(letter)
    const item = drafts[index]?.item ?? null
    return {
      letter,
      item,
      lacks: refusal.lacks
        .filter((lack) => lack.letter === letter)
        .map((lack) => ({ lack, way: wayOf(station, item, lack) })),
    }
  })
}
