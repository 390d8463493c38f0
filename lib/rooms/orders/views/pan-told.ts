/** What a pan says of a guest's needs before anything is chosen. */
import { type Finding, isFine, judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { type NotFree, type Offer, standingOf } from '#lib/rooms/orders/facts/offer.ts'

export type PanTold =
  /** Nothing that this guest keeps from, as far as labels declare. */
  | { readonly kind: 'plain' }
  /** Taken from its protected back-up pan, for this guest. */
  | { readonly kind: 'backup' }
  /** `isApart`: something of it is kept apart; else it is left out only. */
  | {
      readonly kind: 'need'
      readonly isApart: boolean
      /** One for each need, worst first; at least one. */
      readonly findings: readonly Finding[]
    }
  | { readonly kind: 'none'; readonly standing: Exclude<NotFree, { readonly kind: 'need' }> }

const oneANeed = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((one, index) => findings.findIndex((other) => other.need === one.need) === index)

/** How a pan stands to a guest's needs; what a need rules out is told though there is none left. */
export const panTold = (offer: Offer, component: string): PanTold => {
  const standing = standingOf(offer, component)
  if (standing.kind === 'unchecked') return { kind: 'none', standing }
  if (offer.needs.length > 0) {
    const judged = judgeComponent(kitchenOf(offer.state), component, offer.needs)
    const findings = judged.findings.filter(({ level }) => !isFine(level))
    if (findings.length > 0)
      return {
        kind: 'need',
        isApart: findings.some(({ handling }) => handling === 'keep-apart'),
        findings: oneANeed(findings),
      }
  }
  if (standing.kind === 'free') return { kind: standing.fromBackup ? 'backup' : 'plain' }
  return standing.kind === 'need' ? { kind: 'plain' } : { kind: 'none', standing }
}
