/** Where the numbers stand on the pick-up screen, one tile a ticket, and how many there is room for. */
import type { PickUpBuild, PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'

/** `called` stands apart from the path: it is on it again once its guest was asked. */
export type PickUpPlace = PickUpBuild['state']

/** Most tiles that each place shows; more are counted. */
export const ROOM: Readonly<Record<PickUpPlace, number>> = {
  waiting: 18,
  making: 6,
  made: 24,
  called: 6,
}

export interface Tile {
  /** "21", of "21A". */
  readonly number: string
  /** On the shelf all open builds of the ticket, there or not; else those that stand here. */
  readonly builds: readonly PickUpBuild[]
}

export interface Standing {
  readonly tiles: readonly Tile[]
  /** How many more there are than stand here. */
  readonly more: number
}

/** "21" and "A" of "21A". */
export const partsOf = (name: string): readonly [number: string, letter: string] => {
  const number = String(Number.parseInt(name, 10))
  return [number, name.slice(number.length)]
}

const tilesOf = (builds: readonly PickUpBuild[]): readonly Tile[] => {
  const tickets = new Map<string, PickUpBuild[]>()
  for (const build of builds) {
    const [number] = partsOf(build.name)
    const known = tickets.get(number)
    if (known) known.push(build)
    else tickets.set(number, [build])
  }
  return [...tickets].map(([number, all]) => ({ number, builds: all }))
}

/** When a tile came to stand here: with its first build. */
const sinceOf = ({ builds }: Tile, place: PickUpPlace): number =>
  Math.min(...builds.flatMap(({ state, since }) => (state === place ? since : [])))

const tilesIn = ({ builds }: PickUpPicture, place: PickUpPlace): readonly Tile[] => {
  const here = builds.filter(({ state }) => state === place)
  // Each build that is being made is a wrap of its own, and each that is called has its own question.
  if (place === 'making' || place === 'called')
    return here.map((build) => ({ number: partsOf(build.name)[0], builds: [build] }))
  const onShelf = tilesOf(builds).filter((tile) => tile.builds.some((one) => one.state === 'made'))
  if (place === 'made') return onShelf
  return tilesOf(here).filter(({ number }) => !onShelf.some((tile) => tile.number === number))
}

/**
 * The tiles of each place. What waits stands in the order of the line; all else by when it came,
 * first the one that has stood longest. Once a part of a ticket is on the shelf, its tile there
 * shows what is still to come, and its number waits no more.
 */
export const standingIn = (picture: PickUpPicture, place: PickUpPlace): Standing => {
  const tiles = tilesIn(picture, place)
  const inOrder =
    place === 'waiting'
      ? tiles
      : [...tiles].sort((one, other) => sinceOf(one, place) - sinceOf(other, place))
  const room = ROOM[place]
  const shown = inOrder.length > room ? inOrder.slice(0, room - 1) : inOrder
  return { tiles: shown, more: inOrder.length - shown.length }
}
