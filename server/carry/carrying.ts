/** Stations in files: out of a house, looked at, and into a house as a draft. */
import { answersLost, arrived } from '#lib/carry/arrived.ts'
import { carriedFile } from '#lib/carry/canonical.ts'
import type { CarryAnswer, Imported, ImportLook, ImportProblem } from '#lib/carry/http.ts'
import { broughtBy, type Met, metIn } from '#lib/carry/met.ts'
import { picturesNamed } from '#lib/carry/pictures-named.ts'
import { type Carried, readCarried } from '#lib/carry/read-carried.ts'
import { newStationId } from '#lib/editor/begin.ts'
import { changesBetween } from '#lib/editor/changes-between.ts'
import { type Draft, textIn } from '#lib/editor/draft.ts'
import { draftOf } from '#lib/editor/draft-of.ts'
import { assembleDocument } from '#lib/editor/problems-of.ts'
import { layDocument } from '#lib/editor/raw-document.ts'
import { draftIn, foodOf, otherSet } from '#server/carry/house-draft.ts'
import type { CarryPorts } from '#server/carry/ports.ts'

export interface Carrying {
  /** The file of a station: its newest revision, or its draft where none was published. */
  file(station: string): CarryAnswer<{ readonly text: string }>
  /** @param into `new`, or the id of a station */
  look(text: string, into: string): CarryAnswer<ImportLook>
  take(text: string, into: string, saw: number): CarryAnswer<Imported>
}

interface Ready {
  readonly carried: Carried
  readonly met: Met
  readonly saw: number
  /** What stands there now; nothing of a new one. */
  readonly before: Draft
}

const wrong = (problem: ImportProblem) => ({ code: 'wrong-file', problem }) as const

/** As it would be published, so that both sides of a comparison are laid the same way. */
const asPublished = (draft: Draft): Draft =>
  draftOf(JSON.parse(JSON.stringify(layDocument(draft, {}).document)))

export const createCarrying = (ports: CarryPorts): Carrying => {
  const { drafts, pictures } = ports

  const taken = (): readonly string[] => ports.menu.list().stations.map(({ station }) => station)

  /** The id of a new one: the file's own where it is free. */
  const newId = (id: string): string => {
    const there = taken()
    return there.includes(id) ? newStationId(there, id) : id
  }

  const ready = (text: string, into: string): Ready | ReturnType<typeof wrong> => {
    const read = readCarried(text)
    if ('problem' in read) return wrong(read.problem)
    const { carried } = read
    const { allergenSet } = carried.document
    const other = otherSet(ports, allergenSet)
    if (other !== null) return wrong({ why: 'other-allergen-set', there: allergenSet, here: other })
    const there = into === 'new' ? null : draftIn(ports, into)
    if (into !== 'new' && there === null) return wrong({ why: 'no-such-station' })
    const station = there === null ? newId(carried.document.id) : into
    const has = new Set(carried.pictures.map(({ sha256 }) => sha256))
    const document = arrived(carried.document, (sha256) => has.has(sha256))
    const met = metIn(document, foodOf(ports), { id: station, keeps: there?.draft ?? null })
    const { saw } = drafts.now(station)
    return { carried, met, saw, before: there?.draft ?? { station, rows: {} } }
  }

  /** Pictures that labels of what is new here name. */
  const keepPictures = ({ carried, met }: Ready): void => {
    const named = new Set(picturesNamed(met.document))
    for (const { sha256, type, bytes } of carried.pictures)
      if (named.has(sha256)) pictures.keep(sha256, { type, bytes })
  }

  return {
    file: (station) => {
      const seen = draftIn(ports, station)
      if (seen === null) return { code: 'no-such-station' }
      const told = ports.menu.draft(station, null)
      const published = ports.published(station)
      const assembled =
        published !== null || told.code !== 'done'
          ? null
          : assembleDocument(seen.draft, told.labels)
      if (assembled?.ok === false) return { code: 'has-problems', problems: assembled.problems }
      const document = published ?? assembled?.document
      if (document === undefined) return { code: 'no-such-station' }
      const own = picturesNamed(document).flatMap((sha256) => {
        const picture = pictures.find(sha256)
        if (picture === null) return []
        const base64 = Buffer.from(picture.bytes).toString('base64')
        return [{ sha256, type: picture.type, base64 }]
      })
      return { code: 'done', text: carriedFile(document, own) }
    },
    look: (text, into) => {
      const told = ready(text, into)
      if ('code' in told) return told
      const { carried, met, saw, before } = told
      const { id } = carried.document
      const same = draftIn(ports, id)
      return {
        code: 'done',
        there: { station: id, name: carried.document.name },
        station: met.draft.station,
        name: textIn(met.draft.rows.house, 'name'),
        saw,
        same: same === null ? null : { station: id, name: textIn(same.draft.rows.house, 'name') },
        changes: changesBetween(
          into === 'new' ? before : asPublished(before),
          asPublished(met.draft),
        ),
        ingredients: met.ingredients,
        unread: answersLost({
          ingredients: carried.document.ingredients.filter(
            (_, index) => met.ingredients[index]?.does !== 'here',
          ),
        }),
        pictures: carried.pictures.length,
        open: ports.isOpen(met.draft.station),
      }
    },
    take: (text, into, saw) => {
      const told = ready(text, into)
      if ('code' in told) return told
      const { met } = told
      const { station } = met.draft
      const answer = drafts.replace(met.draft, saw)
      if (answer.code === 'stale') return { code: 'stale' }
      if (answer.code !== 'done') return { code: 'failed' }
      // Only now that it is a draft: what is cut short before this is an ingredient that nobody has read.
      ports.keepLabels(broughtBy(met))
      keepPictures(told)
      const now = draftIn(ports, station)
      return { code: 'done', station, saw: now?.saw ?? answer.saw, problems: now?.problems ?? [] }
    },
  }
}
