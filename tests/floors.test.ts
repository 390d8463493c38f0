import { describe, expect, test } from 'vitest'
import {
  crowded,
  FLOORS,
  folderArrows,
  folderCircles,
  misplaced,
  ROOMS,
  wrongFloors,
} from '#tests/support/floor-rules.ts'
import { filesBelow, parseSource, readSources, type Source } from '#tests/support/source-tree.ts'

const MOST_FILES = 22

const sources = readSources(['lib'])

describe('the floors of lib', () => {
  test('nothing imports a floor above, a later room, or the inside of another', () => {
    expect(sources.flatMap(wrongFloors)).toEqual([])
  })

  test('every file stands on a floor, or in a room as one of its kinds', () => {
    expect(filesBelow('lib').filter(misplaced)).toEqual([])
    const standing = new Set(filesBelow('lib').map((path) => path.split('/').slice(0, 2).join('/')))
    expect(FLOORS.filter((floor) => !standing.has(floor))).toEqual([])
    const open = new Set(filesBelow('lib/rooms').map((path) => path.split('/')[2]))
    expect(ROOMS.filter((room) => !open.has(room))).toEqual([])
  })

  test('no folders import each other in circles', () => {
    expect(folderCircles(folderArrows(sources)).map((circle) => circle.join(' > '))).toEqual([])
  })

  test(`no folder has more than ${MOST_FILES} files`, () => {
    expect(crowded([...filesBelow('lib'), ...filesBelow('tests/lib')], MOST_FILES)).toEqual([])
  })
})

describe('these checks themselves', () => {
  const at = (path: string, imported: string, type = ''): Source =>
    parseSource(path, `import ${type} { one } from '#${imported}'`)

  test.each([
    ['measure reads a limit', 'lib/measure/a.ts', 'lib/safety/b.ts'],
    ['a limit reads the document', 'lib/safety/a.ts', 'lib/station/b.ts'],
    ['what judges needs reads a state', 'lib/needs/a.ts', 'lib/service/b.ts'],
    ['a number reads a state', 'lib/estimate/a.ts', 'lib/service/b.ts'],
    ['a noun reads a room', 'lib/service/a.ts', 'lib/rooms/care/facts/b.ts'],
    ['a room reads the spine', 'lib/rooms/day/commands/a.ts', 'lib/spine/b.ts'],
    ['a room reads a later one', 'lib/rooms/food/facts/a.ts', 'lib/rooms/pans/facts/b.ts'],
    ['a room reads folds of another', 'lib/rooms/shelf/folds/a.ts', 'lib/rooms/pans/folds/b.ts'],
    ['a command folds', 'lib/rooms/food/commands/a.ts', 'lib/rooms/food/folds/b.ts'],
    ['a fact reads a view', 'lib/rooms/food/facts/a.ts', 'lib/rooms/food/views/b.ts'],
    ['a view decides', 'lib/rooms/food/views/a.ts', 'lib/rooms/food/commands/b.ts'],
    ['a view speaks', 'lib/rooms/food/views/a.ts', 'lib/words/b.ts'],
    ['a room speaks as a later one', 'lib/rooms/care/words/a.ts', 'lib/rooms/day/words/b.ts'],
    ['the spine reads the protocol', 'lib/spine/a.ts', 'lib/protocol/b.ts'],
  ])('find that %s', (_, from, to) => {
    expect(wrongFloors(at(from, to))).toHaveLength(1)
  })

  test.each([
    ['facts of an earlier room', 'lib/rooms/pans/facts/a.ts', 'lib/rooms/food/facts/b.ts', ''],
    ['words of an earlier room', 'lib/rooms/shelf/words/a.ts', 'lib/rooms/care/words/b.ts', ''],
    ['its own facts', 'lib/rooms/pans/folds/a.ts', 'lib/rooms/pans/facts/b.ts', ''],
    ['the shape of a command', 'lib/rooms/day/views/a.ts', 'lib/rooms/day/commands/b.ts', 'type'],
    ['all rooms, from the spine', 'lib/spine/a.ts', 'lib/rooms/day/commands/b.ts', ''],
  ])('let pass %s', (_, from, to, type) => {
    expect(wrongFloors(at(from, to, type))).toEqual([])
  })

  test('find a file on no floor, a circle, and a crowd', () => {
    const nowhere = ['lib/a.ts', 'lib/attic/a.ts', 'lib/rooms/a.ts', 'lib/rooms/attic/facts/a.ts']
    expect([...nowhere, 'lib/rooms/day/notes/a.ts'].filter(misplaced)).toHaveLength(5)
    const circle = [at('lib/a/a.ts', 'lib/b/b.ts'), at('lib/b/c.ts', 'lib/a/d.ts')]
    expect(folderCircles(folderArrows(circle))).toHaveLength(1)
    expect(crowded(['lib/a/a.ts', 'lib/a/b.ts', 'lib/b/c.ts'], 1)).toEqual(['lib/a: 2'])
  })
})
