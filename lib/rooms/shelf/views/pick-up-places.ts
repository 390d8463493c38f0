/** Where the numbers stand on the pick-up screen, and how many there is room for. */
import type { PickUpBuild, PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'

export const PICK_UP_PLACES = ['waiting', 'making', 'made'] as const

/** `called` stands over the line: it is on it again once its guest was asked. */
export type PickUpPlace = PickUpBuild['state']

/** Most numbers that each place shows and that are still read from afar; more are counted. */
export const ROOM: Readonly<Record<PickUpPlace, number>> = {
  waiting: 18,
  making: 6,
  made: 24,
  called: 6,
}

export interface Standing {
  readonly builds: readonly PickUpBuild[]
  /** How many more there are than stand here. */
  readonly more: number
  /** Columns of the grid that the numbers, and the count of more, stand in. */
  readonly columns: number
  readonly rows: number
}

/** Columns by the number of cells, so that numbers stay as large as they can. */
const columnsFor = (place: PickUpPlace, cells: number): number => {
  if (place === 'making') return 1
  if (place === 'called') return Math.max(1, cells)
  if (place === 'waiting') return cells > 5 ? 2 : 1
  if (cells <= 3) return 1
  if (cells <= 8) return 2
  return cells <= 18 ? 3 : 4
}

/**
 * The numbers of each place. What is being made or waits stands in the order of the line; what is
 * made or called, the one that has stood longest first.
 */
export const standingIn = (picture: PickUpPicture, place: PickUpPlace): Standing => {
  const here = picture.builds.filter((build) => build.state === place)
  const isOldestFirst = place === 'made' || place === 'called'
  const inOrder = isOldestFirst ? [...here].sort((one, other) => one.since - other.since) : here
  const room = ROOM[place]
  const shown = inOrder.length > room ? inOrder.slice(0, room - 1) : inOrder
  const more = inOrder.length - shown.length
  const cells = shown.length + (more > 0 ? 1 : 0)
  const columns = columnsFor(place, cells)
  return { builds: shown, more, columns, rows: Math.max(1, Math.ceil(cells / columns)) }
}
