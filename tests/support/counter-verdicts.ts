/**
 * Whether an item fits a guest, or with which smallest change, as the counter settles an order of
 * which there is plenty: by its own functions, so that what is checked of a verdict is what is sold by.
 */

import { type Finding, judgeComponent, RANK } from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import { EMPTY_DRAFT, isKept, type Settled, settle } from '#lib/rooms/orders/facts/draft.ts'
import {
  type Offer,
  type Standing,
  standingFor,
  toAcceptOf,
} from '#lib/rooms/orders/facts/offer.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { Item } from '#lib/station/station-document.ts'

export interface Verdict {
  readonly item: string
  /** `ask`: what can't be left out has cautions that the person in charge may accept. */
  readonly kind: 'fits' | 'with-change' | 'ask' | 'no'
  /** Usual parts that it goes without. */
  readonly leaveOut: readonly string[]
  /** Bases that fit equally where the usual one doesn't: the guest chooses. null: it stays. */
  readonly bases: readonly string[] | null
  /** What parts are left out for, what is to be accepted, or what rules the item out; worst first. */
  readonly findings: readonly Finding[]
  /** Components of the changed build that are taken from their protected back-up pans. */
  readonly fromBackup: readonly string[]
}

const PLENTY = 1_000

const settled = (offer: Offer, item: Item, base: string | null): Settled => {
  const found = settle(offer, { ...EMPTY_DRAFT, needs: offer.needs, item: item.id, base })
  if (!found) throw new Error(`the station has no item ${item.id}`)
  return found
}

const against = (standing: Standing): readonly Finding[] =>
  standing.kind === 'need' ? [standing.finding] : toAcceptOf(standing)

const verdictOf = (offer: Offer, item: Item): Verdict => {
  const first = settled(offer, item, null)
  const { base, toChoose } = first
  const instead = toChoose.length > 0 || base === null ? toChoose : [base.component ?? base.usual]
  const bases = base?.because === 'instead' ? instead : null
  // Where several bases fit equally the guest takes one: any is as good as the first.
  const { parts, blocked, toAccept, fromBackup } =
    toChoose.length > 0 ? settled(offer, item, toChoose[0] ?? null) : first
  const left = parts.filter(
    ({ part, because }) => part.usual !== 'no' && because !== 'asked' && !isKept(item, part),
  )
  const isChanged = left.length > 0 || bases !== null
  const kind = blocked ? 'no' : toAccept.length > 0 ? 'ask' : isChanged ? 'with-change' : 'fits'
  const changed = [
    ...left.flatMap(({ leftFor }) => leftFor ?? []),
    ...(base && bases !== null ? against(base.wantedStanding) : []),
  ].sort((one, other) => RANK[one.level] - RANK[other.level])
  return {
    item: item.id,
    kind,
    leaveOut: left.map(({ part }) => part.component),
    bases,
    findings: blocked ? against(blocked.standing) : kind === 'ask' ? toAccept : changed,
    fromBackup,
  }
}

/** Every item's verdict for one guest. @throws where the document is damaged. */
export const verdictsFor = (
  kitchen: Kitchen,
  needs: readonly Need[],
): Readonly<Record<string, Verdict>> => {
  const { station } = kitchen
  const offer: Offer = {
    state: { ...NOT_OPENED, station },
    needs,
    standing: Object.fromEntries(
      station.components.map(({ id }) => [
        id,
        standingFor(judgeComponent(kitchen, id, needs), PLENTY, { kind: 'gone' }),
      ]),
    ),
    levels: {},
    kept: {},
    item: null,
    ownItem: null,
  }
  return Object.fromEntries(station.items.map((item) => [item.id, verdictOf(offer, item)]))
}
