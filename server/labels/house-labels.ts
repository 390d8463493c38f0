/**
 * The labels of the house: one of each ingredient, whatever stations and services it is in. A service
 * that changes one commits that first and brings it here; what changes here reaches every open service.
 * Found again at a start, whichever of both was cut short: each side knows versions.
 */
import type { UnreadFrom } from '#lib/larder/recall.ts'
import { labelsToTake } from '#lib/rooms/care/facts/house-labels.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import { behindIn } from '#lib/service/known.ts'
import { isUnderWay, type RunningState } from '#lib/service/state.ts'
import { filled, labelsIn } from '#lib/station/filled.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { KeptLabel, Labels } from '#server/labels/port.ts'
import type { LabelsGuard } from '#server/rail/labels-guard.ts'
import type { Rail } from '#server/rail/rail.ts'

export type NewLabel = Omit<KeptLabel, 'version'> & {
  /** The version that was seen. */
  readonly saw: number
}

/** Where a label is told. */
export type LabelRail = Pick<Rail, 'state' | 'note' | 'idle'>

export interface HouseLabels {
  /** The newest; null where the house has none of it. */
  find(ingredient: string, product: string | null): KeptLabel | null
  /** Ids of the ingredients that it has any of. */
  labelled(): readonly string[]
  /** Versions of the products in use that ever changed. */
  newest(): LabelVersions
  /** A document with the house's labels. */
  filled(document: StationDocument): StationDocument
  /** Of the labels that a document is filled with. */
  versionsIn(document: StationDocument): LabelVersions
  /** When a label of a document was last changed, epoch milliseconds; null: none was. */
  changedAt(document: StationDocument): number | null
  /** Keeps labels that come with a document, where the house has none of their ingredients. */
  begin(document: Pick<StationDocument, 'ingredients'>): void
  /**
   * Keeps one and tells it to every open service; null where what was seen isn't the newest any more.
   * Settles when all of them have it.
   */
  change(
    wanted: NewLabel,
  ): Promise<{ readonly version: number; readonly told: readonly string[] } | null>
  /** Keeps what services changed, and tells it to the others. */
  take(events: readonly Recorded[]): void
  /** Keeps that nobody has read what was delivered, and tells it to every open service. */
  unread(delivered: readonly UnreadFrom[]): void
  /** Tells each open service what it lacks; ids of their stations. */
  spread(): readonly string[]
  /** Settles when what was taken is told. */
  idle(): Promise<void>
}

const keyOf = (ingredient: string, product: string | null): string =>
  product === null ? ingredient : `${ingredient} ${product}`

/** Of changes in one commit, which have one version, the last is the label. */
const changesIn = (events: readonly Recorded[]): readonly KeptLabel[] => {
  const changes = new Map<string, KeptLabel>()
  for (const event of events) {
    if (event.type !== 'labelChanged' || event.version === undefined) continue
    const { ingredient, label, version, at, adult = null } = event
    const key = `${ingredient} ${version}`
    const same = event.same === true && (changes.get(key)?.same ?? true)
    changes.set(key, { ingredient, product: null, version, label, same, at, adult })
  }
  return [...changes.values()]
}

const openState = (rail: LabelRail): RunningState | null => {
  const state = rail.state()
  return isUnderWay(state) ? state : null
}

/**
 * @param deps.rails the newest service of each station, and those that are planned
 * @param deps.fatal told where something couldn't be stored: the process ends
 */
export const openHouseLabels = (deps: {
  readonly labels: Labels
  readonly guard: LabelsGuard
  readonly rails: () => readonly LabelRail[]
  readonly fatal: (error: unknown) => void
}): HouseLabels => {
  const { labels, guard } = deps
  const known = new Map<string, KeptLabel>()
  for (const one of labels.newest()) known.set(keyOf(one.ingredient, one.product), one)
  let versions: LabelVersions = {}
  let turn: Promise<unknown> = Promise.resolve()

  const count = (): void => {
    versions = Object.fromEntries(
      [...known.values()].flatMap(({ ingredient, product, version }) =>
        product === null && version > 0 ? [[ingredient, version]] : [],
      ),
    )
  }
  count()

  const find = (ingredient: string, product: string | null): KeptLabel | null =>
    known.get(keyOf(ingredient, product)) ?? null

  const keep = (label: KeptLabel, saw?: number): boolean => {
    if (!labels.put(label, saw)) return false
    known.set(keyOf(label.ingredient, label.product), label)
    count()
    return true
  }

  const behind = (): readonly LabelRail[] =>
    deps.rails().filter((rail) => {
      const state = openState(rail)
      return state !== null && behindIn(state, versions).length > 0
    })

  const tell = (rails: readonly LabelRail[]): readonly string[] =>
    rails.flatMap((rail) => {
      rail.note((state) => (isUnderWay(state) ? labelsToTake(state, versions, labels.since) : []))
      return openState(rail)?.station.id ?? []
    })

  /**
   * Only now that it is put: whoever opened with the labels of before finds the guard raised and decides
   * again, or is open already and is told.
   */
  const putAndTell = async (): Promise<readonly string[]> => {
    await guard.claim()
    const rails = behind()
    const told = tell(rails)
    await Promise.all(rails.map((rail) => rail.idle()))
    return told
  }

  const inTurn = <Result>(act: () => Promise<Result>): Promise<Result> => {
    const mine = turn.then(act)
    turn = mine.catch(() => undefined)
    return mine
  }

  const keepAndTell = (changes: readonly KeptLabel[]): void => {
    if (!changes.map((one) => keep(one)).includes(true)) return
    inTurn(putAndTell).catch(deps.fatal)
  }

  return {
    find,
    labelled: () => [...new Set([...known.values()].map(({ ingredient }) => ingredient))],
    newest: () => versions,
    filled: (document) => filled(document, find),
    versionsIn: ({ ingredients }) =>
      Object.fromEntries(
        ingredients.flatMap(({ id }) => {
          const version = versions[id]
          return version === undefined ? [] : [[id, version]]
        }),
      ),
    changedAt: ({ ingredients }) =>
      ingredients.reduce<number | null>((newest, { id }) => {
        const at = find(id, null)?.at ?? null
        return at === null || (newest ?? at) > at ? newest : at
      }, null),
    begin: (document) => {
      for (const { ingredient, product, label } of labelsIn(document))
        if (find(ingredient, product) === null)
          keep({ ingredient, product, version: 0, label, same: true, at: null, adult: null })
    },
    change: ({ saw, ...wanted }) =>
      inTurn(async () => {
        if ((find(wanted.ingredient, wanted.product)?.version ?? 0) !== saw) return null
        const version = await guard.claim()
        if (!keep({ ...wanted, version }, saw)) return null
        return { version, told: await putAndTell() }
      }),
    take: (events) => keepAndTell(changesIn(events)),
    unread: (delivered) =>
      keepAndTell(
        delivered.map((one) => ({ ...one, product: null, label: null, same: false, adult: null })),
      ),
    spread: () => tell(behind()),
    idle: async () => {
      await turn
    },
  }
}
