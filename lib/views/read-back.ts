import { componentOf } from '#lib/menu/find.ts'
import type { NeedCode } from '#lib/needs/codes.ts'
import type { Settled, SettledPart } from '#lib/views/draft.ts'
import type { NotFree, Offer, RuledOut } from '#lib/views/offer.ts'

/** One thing that is said to the guest before sending. Ids are components; cents are whole. */
export type Statement =
  | {
      readonly say: 'item'
      readonly item: string
      readonly base: string | null
      /** Nothing else is said of the food. */
      readonly asItComes: boolean
    }
  | { readonly say: 'other-base'; readonly wanted: string; readonly standing: NotFree }
  | { readonly say: 'no-asked'; readonly components: readonly string[] }
  | { readonly say: 'out'; readonly components: readonly string[] }
  | { readonly say: 'not-selling'; readonly components: readonly string[] }
  | ({ readonly say: 'need'; readonly components: readonly string[] } & RuledOut)
  | { readonly say: 'added'; readonly components: readonly string[] }
  | { readonly say: 'in-it'; readonly components: readonly string[] }
  | { readonly say: 'side'; readonly components: readonly string[] }
  | {
      readonly say: 'portions'
      readonly component: string
      readonly portions: number
      readonly moreCents: number
    }
  | { readonly say: 'fewer'; readonly component: string; readonly portions: number }
  | { readonly say: 'keep-apart'; readonly codes: readonly NeedCode[] }
  | { readonly say: 'price'; readonly cents: number }

const ids = (parts: readonly SettledPart[]): readonly string[] =>
  parts.map(({ part }) => part.component)

/** Parts that a guest would expect: usual ones, or asked for. */
const isMissed = ({ part, placement, wanted }: SettledPart): boolean =>
  placement === 'no' && (part.usual !== 'no' || wanted.placement !== 'no')

const byNeed = (missed: readonly SettledPart[]): readonly Statement[] => {
  const groups = new Map<string, RuledOut & { components: string[] }>()
  for (const { part, standing, because } of missed) {
    if (because !== 'need' || standing.kind !== 'need') continue
    const { need, declared } = standing
    const group = groups.get(`${need} ${declared}`) ?? { need, declared, components: [] }
    group.components.push(part.component)
    groups.set(`${need} ${declared}`, group)
  }
  return [...groups.values()].map((group) => ({ say: 'need', ...group }))
}

/**
 * What is said to the guest: the item, every way in which it differs from the usual one and whose
 * doing that is, the shared line where a need is kept apart, and the price.
 */
export const readBack = (offer: Offer, settled: Settled): readonly Statement[] => {
  const { item, base, parts, choice } = settled
  const missed = parts.filter(isMissed)
  const taken = parts.filter(({ placement }) => placement !== 'no')
  const differences: Statement[] = []
  const sayOf = (
    say: 'no-asked' | 'out' | 'not-selling' | 'added' | 'in-it' | 'side',
    of: readonly SettledPart[],
  ) => {
    if (of.length > 0) differences.push({ say, components: ids(of) })
  }
  if (base?.because === 'instead' && base.wantedStanding.kind !== 'free')
    differences.push({ say: 'other-base', wanted: base.wanted, standing: base.wantedStanding })
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
    missed.filter(({ because, standing }) => because === 'gone' && standing.kind !== 'gone'),
  )
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
  return [
    {
      say: 'item',
      item: item.id,
      base: base?.component ?? null,
      asItComes: differences.length === 0 && base?.because !== 'asked',
    },
    ...differences,
    ...(apart.length > 0 ? [{ say: 'keep-apart', codes: apart } as const] : []),
    { say: 'price', cents: settled.priceCents },
  ]
}
