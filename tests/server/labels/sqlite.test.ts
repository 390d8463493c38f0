import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import type { KeptLabel } from '#server/labels/port.ts'
import { createSqliteLabels } from '#server/labels/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const READ = { ...UNREAD_LABEL, declarations: { milk: 'free' as const }, traits: [] }

const pita = (version: number, over: Partial<KeptLabel> = {}): KeptLabel => ({
  ingredient: 'pita',
  product: null,
  version,
  label: READ,
  same: false,
  at: 1_000 + version,
  adult: null,
  ...over,
})

const openFile = (path = join(temporaryFolder(), 'house.db')) => {
  const file = openHouseDatabase({ path })
  onTestFinished(() => closeDurableDatabase(file))
  return file
}

describe('the labels in the house’s file', () => {
  it('[L30] the newest of each ingredient and substitute is the label; earlier ones stay', () => {
    const labels = createSqliteLabels(openFile(), 'one')
    expect(labels.put(pita(0, { at: null, same: true }))).toBe(true)
    expect(labels.put(pita(3, { adult: 'a-1' }))).toBe(true)
    expect(labels.put(pita(5, { label: null }))).toBe(true)
    expect(labels.put(pita(4, { product: 'other-mill' }))).toBe(true)
    const newest = labels.newest().toSorted((one, other) => one.version - other.version)
    expect(newest).toEqual([pita(4, { product: 'other-mill' }), pita(5, { label: null })])
    expect(labels.since('pita', 0)).toEqual([pita(3, { adult: 'a-1' }), pita(5, { label: null })])
    expect(labels.since('pita', 5)).toEqual([])
  })

  it('[L30] one that isn’t ahead, or was decided on another than the newest, is not kept', () => {
    const labels = createSqliteLabels(openFile(), 'one')
    expect(labels.put(pita(3), 1)).toBe(false)
    expect(labels.put(pita(3), 0)).toBe(true)
    expect(labels.put(pita(3, { label: null }))).toBe(false)
    expect(labels.put(pita(2))).toBe(false)
    expect(labels.put(pita(9), 2)).toBe(false)
    expect(labels.put(pita(9), 3)).toBe(true)
    expect(labels.newest()).toEqual([pita(9)])
  })

  it('[L30] each house has its own, in one file as well', () => {
    const file = openFile()
    const [own, demo] = [createSqliteLabels(file, 'own'), createSqliteLabels(file, 'demo')]
    own.put(pita(2))
    expect(demo.newest()).toEqual([])
    expect(demo.put(pita(1), 0)).toBe(true)
    expect([own.newest(), demo.newest()]).toEqual([[pita(2)], [pita(1)]])
  })

  it('[L30] what no longer parses counts as never read', () => {
    const file = openFile()
    const labels = createSqliteLabels(file, 'one')
    labels.put(pita(1))
    file.exec(`UPDATE labels SET body = '{"declarations":{"milk":"surely-free"}}'`)
    expect(labels.newest()[0]?.label).toEqual(UNREAD_LABEL)
  })
})
