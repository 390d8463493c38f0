/** Labels over http: shown with what they go into, and saved by the passphrase of somebody in charge. */
import { isDeepStrictEqual } from 'node:util'
import { z } from 'zod'
import { type Draft, type Rows, textIn } from '#lib/editor/draft.ts'
import { allergensIn, labelledIngredients, labelRefused } from '#lib/editor/label-form/labelled.ts'
import type {
  HouseLabel,
  LabelledIngredient,
  LabelRefusal,
  MenuLabels,
  SaveLabel,
  SaveLabelAnswer,
} from '#lib/editor/label-http.ts'
import { civilDate } from '#lib/measure/civil.ts'
import { MOST_PASSPHRASE_UNITS } from '#lib/protocol/wire.ts'
import { labelSchema } from '#lib/station/shapes/label-schema.ts'
import type { Access } from '#server/access/access.ts'
import type { Caller } from '#server/access/caller.ts'
import type { House } from '#server/access/house.ts'
import type { Menu } from '#server/drafts/menu.ts'
import { type MenuRoute, shows, takesMenu } from '#server/http/menu-route.ts'
import type { HouseLabels } from '#server/labels/house-labels.ts'
import type { KeptLabel } from '#server/labels/port.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'

export interface LabelPorts {
  readonly access: Pick<Access, 'adults' | 'from'>
  readonly house: Pick<House, 'adults'>
  readonly labels: Pick<HouseLabels, 'find' | 'change'>
  readonly menu: Pick<Menu, 'draft'>
  readonly stations: Pick<KnownStations, 'all'>
  readonly hasPhoto: (hash: string) => boolean
  /** Epoch milliseconds. */
  readonly now: () => number
}

const id = z.string().min(1).max(80)

const BODY: z.ZodType<SaveLabel> = z.strictObject({
  station: id,
  ingredient: id,
  product: id.optional(),
  saw: z.int().min(0),
  label: labelSchema,
  is: z.enum(['other', 'same']),
  proof: z.strictObject({ passphrase: z.string().max(MOST_PASSPHRASE_UNITS) }),
}) as z.ZodType<SaveLabel>

/** Common practice, no source: as a document that doesn't say. */
const READ_AGAIN_DAYS = 90

export const menuLabelRows = (ports: LabelPorts): readonly MenuRoute[] => {
  const { access, labels, menu, stations, now } = ports

  const draftOf = (station: string): Draft | null => {
    const told = menu.draft(station, null)
    return told.code === 'done' ? { station, rows: told.rows as Rows } : null
  }

  const todayAt = ({ rows: { house } }: Draft): string => {
    try {
      return civilDate(now(), textIn(house, 'timeZone') || 'UTC')
    } catch {
      return civilDate(now(), 'UTC')
    }
  }

  const houseLabel = (ingredient: string, product: string | null): HouseLabel => {
    const kept = labels.find(ingredient, product ?? null)
    if (kept === null) return { version: 0, label: null, at: null, by: null }
    const { version, label, at, adult } = kept
    const by = ports.house.adults().find((one) => one.id === adult)?.name ?? null
    return { version, label, at, by }
  }

  const alsoAt = (station: string) => (ingredient: string) =>
    stations
      .all()
      .filter((one) => one.station !== station)
      .filter(({ document }) => document.ingredients.some((one) => one.id === ingredient))
      .map(({ document }) => document.name)

  const listed = (draft: Draft): readonly LabelledIngredient[] =>
    labelledIngredients(draft, houseLabel, alsoAt(draft.station))

  /** Why it can't be saved, but for the proof; null where it can. */
  const refused = ({
    station,
    ingredient,
    product,
    label,
    saw,
  }: SaveLabel): LabelRefusal | null => {
    const draft = draftOf(station)
    if (draft === null) return { code: 'no-such-station' }
    const found = listed(draft).find((one) => one.ingredient === ingredient)
    if (!found) return { code: 'no-such-ingredient' }
    const of = product === undefined ? found : found.products.find((one) => one.product === product)
    if (!of) return { code: 'no-such-product' }
    if (of.label.version !== saw) return { code: 'stale', now: of.label }
    if (label.photo !== undefined && !ports.hasPhoto(label.photo)) return { code: 'no-such-photo' }
    return labelRefused(allergensIn(draft), label)
  }

  /** The newest, where it is what is asked now: sent once more, since its answer was lost on the way. */
  const keptAs = ({ ingredient, product, saw, label, is }: SaveLabel): KeptLabel | null => {
    const kept = labels.find(ingredient, product ?? null)
    if (!kept?.label || kept.version <= saw || kept.same !== (is === 'same')) return null
    const { readOn, readBy } = kept.label
    return isDeepStrictEqual(kept.label, { ...label, readOn, readBy }) ? kept : null
  }

  const save = async (wanted: SaveLabel, request: Caller): Promise<SaveLabelAnswer> => {
    const why = refused(wanted)
    if (why && !(why.code === 'stale' && keptAs(wanted))) return why
    const tried = await access.adults.proveInCharge(wanted.proof.passphrase, access.from(request))
    if (tried.code === 'too-many-tries') return tried
    if (tried.code !== 'right') return { code: 'not-it' }
    // Comparing takes a while: others may have changed it, or the station, by now.
    const kept = keptAs(wanted)
    if (kept?.adult === tried.adult.id) return { code: 'done', version: kept.version, told: [] }
    const since = refused(wanted)
    if (since) return since
    const { station, ingredient, product = null, saw, label, is } = wanted
    const draft = draftOf(station)
    const changed = await labels.change({
      ingredient,
      product,
      saw,
      label: { ...label, readOn: todayAt(draft ?? { station, rows: {} }), readBy: null },
      same: is === 'same',
      at: now(),
      adult: tried.adult.id,
    })
    return changed
      ? { code: 'done', ...changed }
      : { code: 'stale', now: houseLabel(ingredient, product) }
  }

  return [
    shows('/menu/labels', ({ query }) => {
      const draft = draftOf(query('station'))
      if (draft === null) return { code: 'no-such-station' }
      const days = draft.rows.house?.readAgainDays
      const told: MenuLabels = {
        station: draft.station,
        allergens: allergensIn(draft),
        today: todayAt(draft),
        readAgainDays: typeof days === 'number' ? days : READ_AGAIN_DAYS,
        ingredients: listed(draft),
      }
      return { code: 'done', ...told }
    }),
    takesMenu('/menu/labels', BODY, save),
  ]
}
