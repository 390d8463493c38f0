/** How much of a full shelf is in sight at once. */

/** So many builds have all their room; more stand closer. */
const ROOMY = 4
/** So many fit on a tablet without scrolling. */
export const FITS = 9

export interface ShelfShown<Build> {
  /** The ones that stand longest first. */
  readonly shown: readonly Build[]
  /** How many more there are; they are shown when they are asked for. */
  readonly more: number
  /** They stand closer, each with its mark and its large target. */
  readonly isDense: boolean
}

/** `all`: more was asked for. Where some are left out, what says so has the place of the last one. */
export const shelfShown = <Build>(shelf: readonly Build[], all: boolean): ShelfShown<Build> => {
  const shown = all || shelf.length <= FITS ? shelf : shelf.slice(0, FITS - 1)
  return { shown, more: shelf.length - shown.length, isDense: shelf.length > ROOMY }
}
