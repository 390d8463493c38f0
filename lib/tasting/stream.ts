/** Under which name what is said of tasters lies in the second file; no stream of the log is called so. */

const BEGINS = 'tasting-'

export const tastingApart = (tasting: string): string => `${BEGINS}${tasting}`

/** Id of the tasting; null where something else is called so. */
export const tastingOf = (name: string): string | null =>
  name.startsWith(BEGINS) ? name.slice(BEGINS.length) : null
