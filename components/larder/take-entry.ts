/** What is typed and chosen as food is taken out of the larder, before it is asked. */
import type { NotTheOldest } from '#lib/larder/event.ts'
import type { LotShown } from '#lib/larder/shelf-view.ts'
import { numberOf } from '#lib/measure/number-pad.ts'
import type { PlannedHere, ServicesHere } from '#lib/rooms/day/views/services-here.ts'
import { weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import type { Command } from '#lib/spine/registry.ts'

type Taken = Extract<Command, { readonly type: 'takeFromLarder' }>

/** In what a weight is typed where its station's thermometer is of that scale. */
export const weighedIn = ({ scale }: Pick<LotShown, 'scale'>): 'lb' | 'kg' =>
  scale === 'F' ? 'lb' : 'kg'

/** Whole milligrams or pieces; all of it where nothing is typed; null for what is no amount. */
export const amountTyped = (
  lot: Pick<LotShown, 'amount' | 'unit' | 'scale'>,
  text: string,
): number | null => {
  const said = text.trim()
  if (said === '') return lot.amount
  const typed = lot.unit === 'piece' ? numberOf(said) : weightMg(said, weighedIn(lot))
  return typed !== null && Number.isSafeInteger(typed) && typed > 0 ? typed : null
}

export const takingOf = (
  lot: string,
  amount: number,
  { why, initials }: { readonly why: NotTheOldest | null; readonly initials: string },
): Taken => ({
  type: 'takeFromLarder',
  lot,
  amount,
  ...(why !== null && { why }),
  ...(initials !== '' && { initials }),
})

export interface Into {
  readonly service: string
  /** null: the one that is open. */
  readonly planned: PlannedHere | null
}

/** Where it may go: into the open service, then into those that are planned, the earliest first. */
export const intoWhich = ({ followed, planned }: ServicesHere): readonly Into[] => [
  ...(followed?.isOpen ? [{ service: followed.service, planned: null }] : []),
  ...planned.map((one) => ({ service: one.service, planned: one })),
]

export interface Asked {
  readonly asked: string
  readonly id: string
}

/** What wasn't answered goes again under its id, so that it is taken once; anything else gets a new one. */
export const askedAs = (
  waiting: Asked | null,
  service: string,
  command: Taken,
  newId: () => string,
): Asked => {
  const asked = JSON.stringify([service, command])
  return waiting?.asked === asked ? waiting : { asked, id: newId() }
}
