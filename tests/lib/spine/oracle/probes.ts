/**
 * Probes that go from food to food, as the log tells it: written from the rules, and not from the fold.
 * One that wasn't said to be cleaned carries all that it was in since it last was.
 */
import type { Recorded } from '#lib/service/events/event.ts'
import type { ServiceState } from '#lib/service/state.ts'

export interface Probing {
  readonly probe: string
  readonly cleaned: boolean
  /** `null`: made food, of whatever was loaded. */
  readonly component: string | null
  /** In a batch, or in a back-up pan while that was protected. */
  readonly apart: boolean
  /** Scoops that were in that food. */
  readonly marks: readonly string[]
}

/** The part of a ledger that probes write, and read. */
interface Probed {
  readonly standing: Set<string>
  readonly marks: Map<string, ReadonlySet<string>>
  readonly probed: Map<string, number>
  readonly probings: Probing[]
}

const componentsOf = ({ station }: ServiceState): ReadonlyMap<string, string> =>
  new Map([
    ...(station?.line.wells ?? []).flatMap(({ pans }) =>
      pans.map((pan) => [pan.id, pan.component] as const),
    ),
    ...(station?.backups ?? []).map((one) => [one.id, one.component] as const),
  ])

const nameIn = (event: Recorded): string | null => {
  if ('pan' in event && typeof event.pan === 'string') return `pan/${event.pan}`
  if (event.type === 'backupSet') return `backup/${event.backup}`
  if ('batch' in event && typeof event.batch === 'string') return `batch/${event.batch}`
  return 'what' in event && 'id' in event ? `${event.what}/${event.id}` : null
}

const everLoaded = ({ accounts }: ServiceState): readonly string[] =>
  Object.entries(accounts).flatMap(([component, one]) => (one.loaded > 0 ? [component] : []))

const isStanding = ({ station }: ServiceState, { standing }: Probed, id: string): boolean =>
  standing.has(id) && station?.backups.find((one) => one.id === id)?.protected === true

/** All that a probe has on it, going back to when it was cleaned; null where that is nothing foreign. */
const carried = (
  ledger: Probed,
  probeName: string,
  component: string,
  loaded: readonly string[],
): ReadonlySet<string> | null => {
  const found = new Set<string>()
  let isForeign = false
  for (const one of [...ledger.probings].reverse()) {
    if (one.probe !== probeName) continue
    const all = one.component === null ? loaded : [one.component]
    for (const food of [...all, ...one.marks]) if (food !== component) found.add(food)
    if (!one.apart || all.some((food) => food !== component)) isForeign = true
    if (one.cleaned) break
  }
  return isForeign ? found : null
}

/** Writes down where a probe was, and what it brought into a back-up pan that was protected. */
export const probe = (
  ledger: Probed,
  earlier: Probed,
  event: Recorded,
  after: ServiceState,
): void => {
  const reading = 'reading' in event ? event.reading : null
  if (!reading || reading.probe === null) return
  const [what = '', id = ''] = (nameIn(event) ?? '').split('/')
  const name = reading.probe.trim().toLowerCase()
  const component = what === 'batch' ? after.batches[id]?.component : componentsOf(after).get(id)
  const isLoad = event.type === 'backupSet'
  const isKept = isStanding(after, isLoad ? ledger : earlier, id)
  const isClean = reading.cleaned === true || (isLoad && reading.cleaned === undefined)
  if (what === 'backup' && component !== undefined && isKept && !isClean) {
    const brought = carried(ledger, name, component, everLoaded(after))
    if (brought) {
      ledger.standing.delete(id)
      const had = ledger.marks.get(id) ?? new Set<string>()
      ledger.marks.set(id, new Set([...had, ...brought]))
      if (reading.at === event.at)
        for (const by of brought) if (!had.has(by)) ledger.probed.set(`${id}/${by}`, event.position)
    }
  }
  ledger.probings.push({
    probe: name,
    cleaned: reading.cleaned === true,
    component: component ?? null,
    apart: what === 'batch' || (what === 'backup' && isStanding(after, ledger, id)),
    marks: what === 'batch' ? [] : [...(ledger.marks.get(id) ?? [])],
  })
}
