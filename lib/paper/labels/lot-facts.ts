/** What stands on the label of a lot of the larder: of whom, where, until when, what is in it. */
import type { LotLabel, LotShown } from '#lib/larder/shelf-view.ts'
import { minuteOfDay } from '#lib/measure/civil.ts'
import { type SaidOf, saidOf } from '#lib/paper/allergens/said-of.ts'
import { coolingToRead, type Discard, type LabelCooling } from '#lib/paper/labels/label-dates.ts'
import { coolingState } from '#lib/safety/cooling.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import { limitsWith } from '#lib/safety/limits.ts'
import { labelHere } from '#lib/station/filled.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { asReadOn } from '#lib/station/read-again.ts'
import { labelledAs } from '#lib/station/relabelled.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface LotFacts {
  readonly id: string
  readonly name: string
  /** Milligrams or pieces. */
  readonly amount: number
  readonly unit: LotShown['unit']
  readonly kept: LotShown['kept']
  readonly place: LotShown['place']
  readonly setAsideAt: number
  /** Names of class periods in which it was set aside; one where the bells ring in one way. */
  readonly periods: readonly string[]
  readonly madeAt: number | null
  readonly discard: Discard
  /** In the freezer: days that are left from the day of thawing. */
  readonly daysLeft: number | null
  /** The maker's date of what is frozen, which no day of thawing moves; null where nobody told one. */
  readonly useBy: CivilDate | null
  readonly cooling: LabelCooling | null
  readonly stoodOpen: boolean
  readonly said: SaidOf
}

const LOT = 'lot-on-paper'

/**
 * A station's document that asks labels for what the lot's own station does, and lists what the lot is
 * made of and touched by the house's newest labels: another station's food is read where the house has
 * read it. What the house has no label of is as the document has it; not listed there either, unread.
 */
export const listingLot = (
  document: StationDocument,
  { allergens, listed }: Pick<LotLabel, 'allergens' | 'listed'>,
): StationDocument => {
  const station =
    allergens === null
      ? document
      : {
          ...document,
          allergenSet: allergens.allergenSet,
          ownAllergens: [...allergens.ownAllergens],
        }
  const byId = new Map(listed.map((one) => [one.id, one]))
  const known = new Set(station.ingredients.map(({ id }) => id))
  return {
    ...station,
    ingredients: [
      ...station.ingredients.map((one) => {
        const label = byId.get(one.id)?.label
        return label ? labelledAs(one, labelHere(station, label)) : one
      }),
      ...listed
        .filter(({ id }) => !known.has(id))
        .map(({ id, name, label }) => ({
          id,
          name,
          ...(label ? labelHere(station, label) : UNREAD_LABEL),
        })),
    ],
  }
}

/**
 * By the labels of a document as they count today, and those of products of before that are still in
 * it; an ingredient that isn't listed there is as unread. It touches what it touched where it stood. A
 * scoop went in of what that was made of then; of one of which nothing tells that, nothing is known.
 */
export const saidOfLot = (
  station: StationDocument,
  { madeOf, before, touched }: Pick<LotLabel, 'madeOf' | 'before' | 'touched'>,
  soiledBy: readonly string[],
): SaidOf => {
  const [any] = station.components
  if (any === undefined) throw new RangeError('a station has a component')
  const known = new Map(station.ingredients.map((one) => [one.id, one]))
  const old = before.map(({ ingredient, label }, at) => ({
    id: `before-${at}`,
    name: known.get(ingredient)?.name ?? ingredient,
    ...label,
  }))
  const touching = (touched ?? []).map((one, at) => ({
    ...any,
    id: `touched-${at}`,
    name: one.component,
    ingredients: [...one.madeOf],
    recipes: [],
  }))
  const soilers = soiledBy.map((name, at) => {
    const ingredients = touched?.find(({ component }) => component === name)?.madeOf ?? [name]
    return { ...any, id: `soiled-${at}`, name, ingredients: [...ingredients], recipes: [] }
  })
  const lot = {
    ...any,
    id: LOT,
    ingredients: [...madeOf, ...old.map(({ id }) => id)],
    recipes: [],
  }
  const all = [lot, ...touching].map(({ id }) => id)
  return saidOf(
    {
      station: {
        ...station,
        ingredients: [...station.ingredients, ...old],
        components: [...station.components, lot, ...touching, ...soilers],
        contacts:
          touched === null
            ? null
            : touching.length === 0
              ? []
              : [{ id: 'stood', kind: 'beside', components: all }],
      },
      soiled: soilers.map(({ id: by }) => ({ component: LOT, by })),
      lent: [],
      ready: [],
    },
    LOT,
  )
}

/** Names of periods in which a moment lies, by any way that the bells ring. */
const periodsAt = ({ day, timeZone }: StationDocument, at: number): readonly string[] => {
  const now = minuteOfDay(at, timeZone)
  const minute = (time: string): number => {
    const [hours = 0, minutes = 0] = time.split(':').map(Number)
    return hours * 60 + minutes
  }
  const names = (day.bells ?? [])
    .flatMap(({ periods }) => periods)
    .filter(({ from, to }) => minute(from) <= now && now <= minute(to))
    .map(({ name }) => name)
  return [...new Set(names)]
}

/** A label that changed since the lot was sold by it is as unread, until somebody says which pack it was. */
const withChanged = (station: StationDocument, { relabelled }: LotShown): StationDocument => {
  const changed = new Set(relabelled.map(({ ingredient }) => ingredient))
  return changed.size === 0
    ? station
    : {
        ...station,
        ingredients: station.ingredients.map((one) =>
          changed.has(one.id) ? { ...one, readOn: null } : one,
        ),
      }
}

/** What goes into the bin and nowhere else has no day on which it still is food, and so no label. */
export const hasLabel = ({ bound, barred }: Pick<LotShown, 'bound' | 'barred'>): boolean =>
  bound === null && barred?.code !== 'lot-bound'

/**
 * `now` in epoch milliseconds; `on`: the civil day on which labels that were read too long ago are as
 * unread, undefined where none is known.
 */
export const lotFacts = (
  document: StationDocument,
  lot: LotShown,
  now: number,
  on?: string,
): LotFacts => {
  const station = asReadOn(listingLot(document, lot.label), on)
  const { label } = lot
  const limits = limitsWith(label.limits)
  const isCooling = lot.kept === 'cooling'
  return {
    id: lot.lot,
    name: lot.name,
    amount: lot.amount,
    unit: lot.unit,
    kept: lot.kept,
    place: lot.place,
    setAsideAt: lot.setAsideAt,
    periods: periodsAt(station, lot.setAsideAt),
    madeAt: label.finishedAt ?? label.startedAt,
    discard:
      label.endsAt !== null
        ? { at: label.endsAt, because: 'date' }
        : { at: null, because: lot.kept === 'frozen' ? 'frozen' : 'makers-date' },
    daysLeft: lot.daysLeft,
    useBy: label.useBy,
    cooling: isCooling
      ? coolingToRead(
          label.cooledFrom,
          coolingState(label.cooling, label.cooledFrom, now, limits, label.finishedAt),
          label.cooling,
          limits,
        )
      : null,
    stoodOpen: lot.stoodOpen,
    said: saidOfLot(withChanged(station, lot), label, lot.soiledBy),
  }
}
