/** What a station begins from. */
import type { Draft, Row } from '#lib/editor/draft.ts'
import { newId, slug } from '#lib/editor/ids.ts'
import { UNSAID_DAY, UNSAID_HOUSE, UNSAID_SAFETY } from '#lib/station/shapes/older-documents.ts'

/** What the laptop says of where it stands. */
export interface Here {
  /** A name of the IANA time zone database. */
  readonly timeZone: string
  readonly locale: string
}

/** Of the two sets that are known, the wider one wherever the law isn't the United States'. */
const OF_LOCALE: Readonly<Record<string, { readonly currency: string; readonly set: string }>> = {
  'en-US': { currency: 'USD', set: 'us-9' },
  'en-CA': { currency: 'CAD', set: 'eu-14' },
  'en-GB': { currency: 'GBP', set: 'eu-14' },
  'en-IE': { currency: 'EUR', set: 'eu-14' },
  'en-AU': { currency: 'AUD', set: 'eu-14' },
  'en-NZ': { currency: 'NZD', set: 'eu-14' },
}

const AMERICAN = { currency: 'USD', set: 'us-9' }

/** A station of which nothing is said but its name: the settings of a house, no well and no food. */
export const emptyStation = (station: string, name: string, { timeZone, locale }: Here): Draft => {
  const known = locale in OF_LOCALE ? locale : UNSAID_HOUSE.locale
  const { currency, set } = OF_LOCALE[known] ?? AMERICAN
  const isFahrenheit = known === 'en-US'
  return {
    station,
    rows: {
      house: {
        ...UNSAID_HOUSE,
        name,
        locale: known,
        timeZone,
        currency,
        allergenSet: set,
        ownAllergens: [],
        cautions: 'ask',
        invented: false,
      },
      safety: { ...UNSAID_SAFETY, scale: isFahrenheit ? 'F' : 'C' },
      day: { ...UNSAID_DAY },
    },
  }
}

/** On another line nobody has said yet that something doesn't touch. */
export const withoutApart = ({ station, rows }: Draft): Draft => ({
  station,
  rows: Object.fromEntries(
    Object.entries(rows).filter(
      ([key, row]) => !(key.startsWith('contact:') && row?.touches === false),
    ),
  ),
})

/** A new station: a copy of another's rows under its own id and name, or nothing but its settings. */
export const begun = ({
  station,
  name,
  here,
  from,
}: {
  readonly station: string
  readonly name: string
  readonly here: Here
  readonly from: Draft | null
}): Draft => {
  if (from === null) return emptyStation(station, name, here)
  // It is nobody's invention from now on, and stands where the laptop does.
  const { contactsSaid: _, ...settings } = from.rows.house ?? {}
  const house: Row = { ...settings, name, invented: false, timeZone: here.timeZone }
  return { station, rows: { ...withoutApart(from).rows, house } }
}

/** The id of a new station by its name, other than those that are there. */
export const newStationId = (taken: readonly string[], name: string): string => {
  const rows = Object.fromEntries(taken.map((id) => [`well:${id}` as const, {}]))
  return newId({ station: '', rows }, 'well', slug(name) === '' ? 'station' : name)
}
