/**
 * Under which names what is said of people at tastings, and of saved yields, lies in the second file;
 * no stream of the log is called so.
 */

const BEGINS = 'tasting-'

export const tastingApart = (tasting: string): string => `${BEGINS}${tasting}`

/** Id of the tasting; null where something else is called so. */
export const tastingOf = (name: string): string | null =>
  name.startsWith(BEGINS) ? name.slice(BEGINS.length) : null

const YIELDS_BEGIN = 'saved-yields-'

/** Of who took a saved yield out, or counted it after all. */
export const yieldsApart = (station: string): string => `${YIELDS_BEGIN}${station}`

/** Id of the station; null where something else is called so. */
export const yieldsApartOf = (name: string): string | null =>
  name.startsWith(YIELDS_BEGIN) ? name.slice(YIELDS_BEGIN.length) : null

/** Whether it is of tastings or of saved yields, and of no service. */
export const isOfTasting = (name: string): boolean =>
  tastingOf(name) !== null || yieldsApartOf(name) !== null
