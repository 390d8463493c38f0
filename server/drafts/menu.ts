/** What the set-up screens ask of a house: its drafts, its published stations, and one into the other. */
import { broughtBy, metIn } from '#lib/carry/met.ts'
import { begun, type Here, newStationId } from '#lib/editor/begin.ts'
import type { Change } from '#lib/editor/change.ts'
import { changesBetween } from '#lib/editor/changes-between.ts'
import { type Draft, textIn } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import type {
  BackTo,
  BeginStation,
  Compared,
  ListedStation,
  MenuAnswer,
  MenuDraft,
  MenuRevisions,
  MenuStations,
  Published,
  Saved,
  SaveSteps,
} from '#lib/editor/http.ts'
import {
  type HouseLabelOf,
  idsOfBefore,
  underOthersLabel,
} from '#lib/editor/label-form/under-label.ts'
import { missingFor } from '#lib/editor/missing-for.ts'
import { assembleDocument, problemsOf } from '#lib/editor/problems-of.ts'
import { type DraftLabels, layDocument } from '#lib/editor/raw-document.ts'
import { civilDate } from '#lib/measure/civil.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { Drafts, SaveAnswer } from '#server/drafts/drafts.ts'
import type { Publications } from '#server/drafts/publications.ts'

/** Published documents, filled with the house's labels. */
export interface MenuShelf {
  /** Ids of the stations that were ever published, first published first. */
  stations(): readonly string[]
  newest(station: string): { readonly revision: number; readonly document: StationDocument } | null
  /** An earlier one; null where there is no such revision. */
  at(station: string, revision: number): StationDocument | null
  /** Revisions of a station, newest first. */
  revisions(station: string): readonly number[]
  /** Keeps a document as its station's newest, and its revision. */
  put(document: StationDocument): Promise<number>
}

export interface MenuPorts {
  readonly drafts: Drafts
  readonly shelf: MenuShelf
  readonly publications: Publications
  /** The house's labels of what a draft lists, by ingredient and `ingredient/product`. */
  readonly labels: (draft: Draft) => DraftLabels
  /** The newest of an ingredient, or of one of its substitutes, listed or not; null where there is none. */
  readonly labelOf: HouseLabelOf
  /** Ids of all ingredients that it has a label of. */
  readonly labelled: () => readonly string[]
  /** Keeps labels that come with a set, where the house has none. */
  readonly beginLabels: (document: Pick<StationDocument, 'ingredients'>) => void
  /** What a station may begin from beside those of the house; each as one that nobody has read here. */
  readonly sets: readonly { readonly from: string; readonly document: StationDocument }[]
  readonly isOpen: (station: string) => boolean
  /** Settles when the open service of a station has what it takes of its newest revision. */
  readonly told: (station: string) => Promise<void>
  readonly here: Here
  /** Epoch milliseconds. */
  readonly now: () => number
}

export interface Menu {
  list(): MenuStations
  draft(station: string, after: number | null): MenuAnswer<MenuDraft>
  save(wanted: SaveSteps): MenuAnswer<Saved>
  begin(wanted: BeginStation): MenuAnswer<{ readonly station: string; readonly saw: number }>
  publish(wanted: {
    readonly station: string
    readonly saw: number
    /** Who proved it. */
    readonly adult: string
    /** What it no longer names as touching never touched in the open service. */
    readonly neverTouched: boolean
  }): Promise<MenuAnswer<Published>>
  revisions(station: string): MenuAnswer<MenuRevisions>
  compare(station: string, from: string, to: string): MenuAnswer<Compared>
  back(wanted: BackTo): MenuAnswer<Saved>
}

const written = (document: unknown): WrittenDocument =>
  JSON.parse(JSON.stringify(document)) as WrittenDocument

const NO_STATION = { code: 'no-such-station' } as const

export const createMenu = (ports: MenuPorts): Menu => {
  const { drafts, shelf, publications } = ports

  const isStation = (station: string): boolean =>
    station !== '' && (drafts.has(station) || shelf.newest(station) !== null)

  /** A station that was published before there were drafts has one from its newest document. */
  const ready = (station: string): boolean => {
    if (drafts.has(station)) return true
    const newest = station === '' ? null : shelf.newest(station)
    if (newest === null) return false
    const draft = draftOf(written(newest.document))
    return drafts.replace(draft, drafts.now(station).saw).code === 'done'
  }

  const today = (draft: Draft): string => {
    try {
      return civilDate(ports.now(), textIn(draft.rows.house, 'timeZone') || 'UTC')
    } catch {
      return civilDate(ports.now(), 'UTC')
    }
  }

  /** As it would be published, so that both sides of a comparison were laid the same way. */
  const asPublished = (draft: Draft): Draft => draftOf(written(layDocument(draft, {}).document))

  const unpublished = (station: string, draft: Draft): readonly Change[] => {
    const newest = shelf.newest(station)
    const before = newest === null ? { station, rows: {} } : draftOf(written(newest.document))
    return changesBetween(before, asPublished(draft))
  }

  const standing = (draft: Draft) => {
    const labels = ports.labels(draft)
    const problems = problemsOf(draft, labels)
    return { problems, missing: missingFor(draft, labels, problems, today(draft)) }
  }

  const saved = (station: string, answer: SaveAnswer): MenuAnswer<Saved> => {
    if (answer.code !== 'done') return answer
    return { ...answer, ...standing(drafts.now(station).draft) }
  }

  const all = (): readonly string[] => [...new Set([...shelf.stations(), ...drafts.stations()])]

  const rowsAt = (station: string, which: string): Draft | null => {
    if (which === 'draft') return ready(station) ? asPublished(drafts.now(station).draft) : null
    const document = /^\d{1,9}$/.test(which) ? shelf.at(station, Number(which)) : null
    return document === null ? null : draftOf(written(document))
  }

  return {
    list: () => ({
      stations: all().map((station): ListedStation => {
        const newest = shelf.newest(station)
        const { draft } = drafts.now(station)
        const hasDraft = drafts.has(station)
        const name = hasDraft ? textIn(draft.rows.house, 'name') : (newest?.document.name ?? '')
        return {
          station,
          name,
          published: newest?.revision ?? null,
          changed: hasDraft && unpublished(station, draft).length > 0,
          open: ports.isOpen(station),
        }
      }),
      sets: ports.sets.map(({ from, document }) => ({ from, name: document.name })),
    }),
    draft: (station, after) => {
      if (!ready(station)) return NO_STATION
      const { draft, saw } = drafts.now(station)
      return {
        code: 'done',
        station,
        saw,
        rows: after === null ? draft.rows : drafts.since(station, after),
        labels: ports.labels(draft),
        idsOfBefore: idsOfBefore(draft, ports.labelled()),
        ...standing(draft),
        published: shelf.newest(station)?.revision ?? null,
        changed: unpublished(station, draft).length > 0,
        open: ports.isOpen(station),
        today: today(draft),
      }
    },
    save: ({ station, saw, steps }) => {
      if (!ready(station)) return NO_STATION
      const answer = drafts.save(station, saw, steps, (before, all) =>
        underOthersLabel(before, all, ports.labelOf),
      )
      return saved(station, answer)
    },
    begin: ({ from, name, timeZone = ports.here.timeZone }) => {
      if (name.trim() === '') return { code: 'no-name' }
      const station = newStationId(all(), name)
      const set = ports.sets.find((one) => one.from === from)
      const own = set === undefined && isStation(from) ? from : null
      if (from !== 'nothing' && set === undefined && own === null) return { code: 'no-such-set' }
      // Food of stations that were published before there were drafts is the house's too.
      for (const one of all()) ready(one)
      const { draft: house, saw } = drafts.now(station)
      // What the house has under an id of the set may be other food, with a label of its own.
      const food = { draft: house, label: (id: string) => ports.labelOf(id, null) }
      const met = set === undefined ? null : metIn(set.document, food, { id: station, keeps: null })
      const draft = begun({
        station,
        name: name.trim(),
        here: { ...ports.here, timeZone },
        from: met?.draft ?? (own === null ? null : drafts.now(own).draft),
      })
      const answer = drafts.replace(draft, saw)
      if (answer.code !== 'done') return answer
      if (met !== null) ports.beginLabels(broughtBy(met))
      return { code: 'done', station, saw: answer.saw }
    },
    publish: async ({ station, saw, adult, neverTouched }) => {
      if (!ready(station)) return NO_STATION
      const { draft } = drafts.now(station)
      const rows = drafts.since(station, saw)
      const changed = Object.keys(rows) as (keyof typeof rows)[]
      if (changed.length > 0) return { code: 'stale', saw: drafts.now(station).saw, rows, changed }
      const assembled = assembleDocument(draft, ports.labels(draft))
      if (!assembled.ok) return { code: 'has-problems', problems: assembled.problems }
      const changes = unpublished(station, draft)
      const revision = await shelf.put(assembled.document)
      publications.keep({ station, revision, at: ports.now(), adult, neverTouched })
      await ports.told(station)
      return { code: 'done', revision, changes }
    },
    revisions: (station) => {
      if (!isStation(station)) return NO_STATION
      const at = new Map(publications.of(station).map((one) => [one.revision, one.at]))
      const revisions = shelf.revisions(station)
      return {
        code: 'done',
        revisions: revisions.map((revision) => ({ revision, at: at.get(revision) ?? null })),
      }
    },
    compare: (station, from, to) => {
      if (!isStation(station)) return NO_STATION
      const [before, after] = [rowsAt(station, from), rowsAt(station, to)]
      if (before === null || after === null) return { code: 'no-such-revision' }
      return { code: 'done', changes: changesBetween(before, after) }
    },
    back: ({ station, saw, revision }) => {
      if (!isStation(station)) return NO_STATION
      const document = shelf.at(station, revision)
      if (document === null) return { code: 'no-such-revision' }
      ready(station)
      return saved(station, drafts.replace(draftOf(written(document)), saw))
    },
  }
}
