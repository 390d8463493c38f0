import { mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { openDataFolder } from '#server/data-folder.ts'
import { storeFaultOf } from '#tests/support/store-fault.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

describe('openDataFolder', () => {
  it('[L19] a missing folder is made, several deep, for this user only, and left empty', () => {
    const path = join(temporaryFolder(), 'school', 'kitchen', 'data')
    expect(openDataFolder(path)).toEqual({
      path,
      log: join(path, 'log.db'),
      guests: join(path, 'guests.db'),
      house: join(path, 'house.db'),
    })
    expect(readdirSync(path)).toEqual([])
    if (process.platform !== 'win32') expect(statSync(path).mode & 0o777).toBe(0o700)
  })

  it('[L19] a folder that is there keeps what it holds', () => {
    const path = temporaryFolder()
    writeFileSync(join(path, 'log.db'), 'as it was')
    openDataFolder(path)
    expect(readdirSync(path)).toEqual(['log.db'])
  })

  it('[L19] a path that is a file is refused', () => {
    const path = join(temporaryFolder(), 'notes.txt')
    writeFileSync(path, 'figs')
    expect(storeFaultOf(() => openDataFolder(path))).toMatchObject({
      code: 'unwritable',
      path,
      at: path,
      reason: 'is-a-file',
    })
  })

  it.each([['data'], ['data', 'deeper']])(
    '[L19] a path below a file is refused: %s %s',
    (...below) => {
      const file = join(temporaryFolder(), 'notes.txt')
      writeFileSync(file, 'figs')
      const path = join(file, ...below)
      expect(storeFaultOf(() => openDataFolder(path))).toMatchObject({
        code: 'unwritable',
        path,
        at: file,
        reason: 'below-a-file',
      })
    },
  )

  it('[L19] a folder where a file cannot be written is refused, although it can be read', (context) => {
    if (process.platform !== 'linux') context.skip('/proc is there on Linux only')
    expect(storeFaultOf(() => openDataFolder('/proc/self'))).toMatchObject({
      code: 'unwritable',
      path: '/proc/self',
    })
    expect(storeFaultOf(() => openDataFolder('/proc/level-scoop/data'))).toMatchObject({
      code: 'unwritable',
      at: '/proc',
    })
  })

  it('[L19] a folder that cannot be written is refused even where its name is taken by a folder', () => {
    const path = temporaryFolder()
    mkdirSync(join(path, '.write-trial'))
    expect(storeFaultOf(() => openDataFolder(path))).toMatchObject({
      code: 'unwritable',
      reason: 'is-a-folder',
    })
  })
})
