import { tellFinding } from '#lib/needs/finding-told.ts'
import type { Finding } from '#lib/needs/judge.ts'
import { leftOutThough } from '#lib/rooms/care/facts/left-out-though.ts'
import type { Settled, SettledPart } from '#lib/rooms/orders/facts/draft.ts'
import { type Offer, type Standing, standingOf, toAcceptOf } from '#lib/rooms/orders/facts/offer.ts'
import type { Statement } from '#lib/rooms/orders/facts/statement.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf } from '#lib/station/find.ts'

const ids = (parts: readonly SettledPart[]): readonly string[] =>
  parts.map(({ part }) => part.component)

/** Parts that a guest would expect: usual ones, or asked for. */
const isMissed = ({ part, placement, wanted }: SettledPart): boolean =>
  placement === 'no' && (part.usual !== 'no' || wanted.placement !== 'no')

type ByNeed = Extract<Statement, { readonly say: 'need' }>

const byNeed = (missed: readonly SettledPart[]): readonly Statement[] => {
  const groups = new Map<string, ByNeed>()
  for (const { part, leftFor } of missed) {
    if (leftFor === null) continue
    const { need, why, touches } = leftFor
    const key = `${need} ${why} ${touches}`
    const components = [...(groups.get(key)?.components ?? []), part.component]
    groups.set(key, { say: 'need', need, why, touches, components })
  }
  return [...groups.values()]
}

const whyNotBase = (standing: Standing): Finding | null =>
  standing.kind === 'need' ? standing.finding : (toAcceptOf(standing)[0] ?? null)

const byBase = (offer: Offer, { base, toChoose }: Settled): readonly Statement[] => {
  if (base?.because !== 'instead') return []
  const { wanted, wantedStanding } = base
  const finding = whyNotBase(wantedStanding)
  const said: Statement[] = []
  if (finding)
    said.push({
      say: 'not-this-base',
      wanted,
      because: tellFinding(offer.state.station, finding),
    })
  else if (
    wantedStanding.kind === 'gone' ||
    wantedStanding.kind === 'not-selling' ||
    wantedStanding.kind === 'kept'
  )
    said.push({ say: 'other-base', wanted, why: wantedStanding.kind })
  if (toChoose.length > 0) said.push({ say: 'which-base', bases: toChoose })
  return said
}

/** Needs of which something taken has a note: that it isn't listed, or what may get in where it is left out. */
const noted = (
  offer: Offer,
  { base, parts }: Settled,
): Readonly<Record<'notListed' | 'others', readonly NeedCode[]>> => {
  const taken = [
    ...(base?.component ? [base.component] : []),
    ...parts.filter(({ placement }) => placement !== 'no').map(({ part }) => part.component),
  ]
  const notes = taken.flatMap((component) => {
    const standing = standingOf(offer, component)
    return standing.kind === 'free' ? standing.notes : []
  })
  const codesOf = (isListed: boolean) => [
    ...new Set(
      notes.filter(({ why }) => (why !== 'not-listed') === isListed).map(({ need }) => need),
    ),
  ]
  return { notListed: codesOf(false), others: codesOf(true) }
}

/**
 * What is said to the guest: the item, every way in which it differs from the usual one and whose
 * doing that is, the shared line where it counts, and the price.
 */
export const readBack = (offer: Offer, settled: Settled): readonly Statement[] => {
  const { item, base, parts, choice, toAccept, fromBackup } = settled
  const missed = parts.filter(isMissed)
  const taken = parts.filter(({ placement }) => placement !== 'no')
  const differences: Statement[] = []
  const sayOf = (
    say: 'no-asked' | 'out' | 'not-selling' | 'added' | 'in-it' | 'side',
    of: readonly SettledPart[],
  ) => {
    if (of.length > 0) differences.push({ say, components: ids(of) })
  }
  differences.push(...byBase(offer, settled))
  sayOf(
    'no-asked',
    missed.filter(({ because }) => because === 'asked'),
  )
  sayOf(
    'out',
    missed.filter(({ because, standing }) => because === 'gone' && standing.kind === 'gone'),
  )
  sayOf(
    'not-selling',
    missed.filter(({ because, standing }) => because === 'gone' && standing.kind === 'not-selling'),
  )
  for (const { part, because, standing } of missed)
    if (because === 'gone' && standing.kind === 'kept')
      differences.push({ say: 'kept', component: part.component, for: standing.for })
  differences.push(...byNeed(missed))
  sayOf(
    'added',
    taken.filter(({ part, placement }) => part.usual === 'no' && placement === 'in'),
  )
  sayOf(
    'in-it',
    taken.filter(({ part, placement }) => part.usual === 'side' && placement === 'in'),
  )
  sayOf(
    'side',
    taken.filter(({ placement }) => placement === 'side'),
  )
  for (const { part, portions, wanted } of taken) {
    if (portions > 1)
      differences.push({
        say: 'portions',
        component: part.component,
        portions,
        moreCents: (portions - 1) * componentOf(offer.state.station, part.component).extraCents,
      })
    if (portions < wanted.portions)
      differences.push({ say: 'fewer', component: part.component, portions })
  }
  const apart = choice.needs.filter((one) => one.handling === 'keep-apart').map((one) => one.code)
  const asTold = leftOutThough(choice.needs)
  const { notListed, others } = noted(offer, settled)
  return [
    {
      say: 'item',
      item: item.id,
      base: base?.component ?? null,
      asItComes: differences.length === 0 && base?.because !== 'asked',
    },
    ...differences,
    ...(fromBackup.length > 0 ? [{ say: 'backup', components: fromBackup } as const] : []),
    ...toAccept.map(
      (one): Statement => ({
        say: 'caution',
        told: tellFinding(offer.state.station, one),
      }),
    ),
    ...(toAccept.length > 0 && choice.caution !== null ? [{ say: 'accepted' } as const] : []),
    ...(apart.length > 0 ? [{ say: 'keep-apart', codes: apart } as const] : []),
    ...(asTold.length > 0 ? [{ say: 'as-told', codes: asTold } as const] : []),
    ...(notListed.length > 0 ? [{ say: 'not-listed', codes: notListed } as const] : []),
    ...(others.length > 0 ? [{ say: 'noted', codes: others } as const] : []),
    { say: 'price', cents: settled.priceCents },
  ]
}
