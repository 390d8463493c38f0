import { dirname } from 'node:path'
import type { Source } from '#tests/support/source-tree.ts'

/** From the ground up: each imports itself and what stands below it. */
export const FLOORS: readonly string[] = [
  'lib/measure',
  'lib/recipes',
  'lib/safety',
  'lib/station',
  'lib/needs',
  'lib/tasting',
  'lib/estimate',
  'lib/larder',
  'lib/prep',
  'lib/service',
  'lib/words',
  'lib/rooms',
  'lib/spine',
  'lib/access',
  'lib/editor',
  'lib/carry',
  'lib/paper',
  'lib/protocol',
  'lib/sync',
]

/** In this order: a room reads facts of the rooms before it, and nothing of a later one. */
export const ROOMS: readonly string[] = [
  'care',
  'food',
  'pans',
  'making',
  'orders',
  'shelf',
  'advice',
  'prep',
  'day',
]

/** What a room's files are, and which of their own room's each may import. */
const KINDS: Readonly<Record<string, readonly string[]>> = {
  facts: ['facts'],
  folds: ['facts', 'folds'],
  commands: ['facts', 'commands'],
  views: ['facts', 'commands', 'views'],
  words: ['facts', 'views', 'words'],
}

const floorOf = (path: string): number => FLOORS.findIndex((floor) => path.startsWith(`${floor}/`))

interface InRoom {
  readonly room: number
  readonly kind: string
}

const inRoom = (path: string): InRoom | null => {
  const [, room = '', kind = ''] = /^lib\/rooms\/([^/]+)\/([^/]+)\//.exec(path) ?? []
  return room === '' ? null : { room: ROOMS.indexOf(room), kind }
}

const isOfWords = (path: string): boolean => path.split('/').includes('words')

/** Why a file of lib may not import another; null where it may. */
const whyNot = (from: string, to: string, typeOnly: boolean): string | null => {
  if (floorOf(to) > floorOf(from)) return 'a floor above'
  if (isOfWords(to) && !isOfWords(from)) return 'words, which only words and screens import'
  const [own, other] = [inRoom(from), inRoom(to)]
  if (own === null || other === null) return null
  if (other.room > own.room) return 'a later room'
  if (other.room < own.room) {
    const isShared = other.kind === 'facts' || (own.kind === 'words' && other.kind === 'words')
    return isShared ? null : 'the inside of another room'
  }
  if (!KINDS[own.kind]?.includes(other.kind)) return `${other.kind} in ${own.kind}`
  const isAsking = own.kind === 'views' && other.kind === 'commands'
  return isAsking && !typeOnly ? 'what decides in a view' : null
}

/** Imports of lib against its floors, the order of its rooms, and the kinds within a room. */
export const wrongFloors = ({ path, imports }: Source): readonly string[] =>
  path.startsWith('lib/')
    ? imports.flatMap(({ file, typeOnly }) => {
        const why = file?.startsWith('lib/') ? whyNot(path, file, typeOnly) : null
        return why === null ? [] : [`${path} imports ${file}: ${why}`]
      })
    : []

/** Folders and files of lib that stand on no floor, in no room, or are of no kind. */
export const misplaced = (path: string): boolean => {
  if (!path.startsWith('lib/') || path === 'lib/RULES.md' || path === 'lib/DECISIONS.md')
    return false
  if (floorOf(path) === -1) return true
  if (!path.startsWith('lib/rooms/')) return false
  const at = inRoom(path)
  return at === null || at.room === -1 || KINDS[at.kind] === undefined
}

/** Which folders import which, by the imports of their files. */
export const folderArrows = (
  sources: Iterable<Source>,
): ReadonlyMap<string, ReadonlySet<string>> => {
  const arrows = new Map<string, Set<string>>()
  for (const { path, imports } of sources) {
    const from = dirname(path)
    const known = arrows.get(from) ?? new Set<string>()
    for (const { file } of imports) if (file && dirname(file) !== from) known.add(dirname(file))
    arrows.set(from, known)
  }
  return arrows
}

/** Circles among folders, each as the folders in order. */
export const folderCircles = (
  arrows: ReadonlyMap<string, ReadonlySet<string>>,
): readonly (readonly string[])[] => {
  const circles: (readonly string[])[] = []
  const done = new Set<string>()
  const visit = (folder: string, chain: readonly string[]): void => {
    const at = chain.indexOf(folder)
    if (at !== -1) {
      circles.push([...chain.slice(at), folder])
      return
    }
    if (done.has(folder)) return
    for (const next of arrows.get(folder) ?? []) visit(next, [...chain, folder])
    done.add(folder)
  }
  for (const folder of arrows.keys()) visit(folder, [])
  return circles
}

/** Folders with more files than one sees at a glance, with how many they hold. */
export const crowded = (paths: readonly string[], most: number): readonly string[] => {
  const counts = new Map<string, number>()
  for (const path of paths) counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1)
  return [...counts].flatMap(([folder, count]) => (count > most ? [`${folder}: ${count}`] : []))
}
