import { type Offer, type Standing, standingOf } from '#lib/rooms/orders/facts/offer.ts'
import type { Item } from '#lib/station/station-document.ts'

export interface SettledBase {
  /** null: several fit equally, and the guest hasn't chosen. */
  readonly component: string | null
  readonly usual: string
  /** `instead`: neither asked for nor usual, but what there is. */
  readonly because: 'usual' | 'asked' | 'instead'
  /** How the base stands that was wanted. */
  readonly wantedStanding: Standing
  readonly wanted: string
}

/** 0 fits; 1 and 2 have to be accepted; 3 can't be had. */
const hindranceOf = (standing: Standing): number => {
  if (standing.kind !== 'free') return 3
  const [worst] = standing.toAccept
  if (!worst) return 0
  return worst.level === 'ask' ? 1 : 2
}

/** The base that a guest gets who asked for `asked`; null: for the usual one. */
export const settleBase = (offer: Offer, asked: string | null, item: Item): SettledBase | null => {
  if (!item.base) return null
  const { choices, usual } = item.base
  const wanted = asked ?? usual
  const wantedStanding = standingOf(offer, wanted)
  const found = { usual, wanted, wantedStanding }
  const hindrance = (id: string) => hindranceOf(standingOf(offer, id))
  const least = Math.min(...choices.map(hindrance))
  const isChosen = asked !== null && wantedStanding.kind === 'free'
  if (isChosen || hindrance(wanted) === least)
    return { ...found, component: wanted, because: wanted === usual ? 'usual' : 'asked' }
  const best = choices.filter((one) => hindrance(one) === least)
  const byNeed = wantedStanding.kind === 'need' || wantedStanding.kind === 'free'
  return {
    ...found,
    component: byNeed && best.length > 1 ? null : (best[0] ?? wanted),
    because: 'instead',
  }
}

/** Bases that fit equally where the usual one doesn't, while none of them is chosen. */
export const basesToChoose = (
  offer: Offer,
  item: Item,
  base: SettledBase | null,
): readonly string[] => {
  if (base?.component !== null || !item.base) return []
  const hindrance = (id: string) => hindranceOf(standingOf(offer, id))
  const least = Math.min(...item.base.choices.map(hindrance))
  return item.base.choices.filter((one) => hindrance(one) === least)
}
