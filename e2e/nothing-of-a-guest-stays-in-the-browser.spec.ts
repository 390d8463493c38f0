import type { Page } from '@playwright/test'
import { KEPT, type KeptRow } from '#lib/access/kept.ts'
import { itemRow, sendButton, tellNeed, ticketIsSent } from './support/hands.ts'
import { expect, test } from './support/job.ts'

interface Stored {
  readonly keys: readonly string[]
  /** All that lies in storage, as one text. */
  readonly text: string
}

const stored = (page: Page): Promise<Stored> =>
  page.evaluate(async () => {
    const shelves = [localStorage, sessionStorage].flatMap((one) => Object.entries(one))
    const databases = await indexedDB.databases()
    const rows: unknown[] = []
    for (const { name = '' } of databases) {
      const database = await new Promise<IDBDatabase>((settle, fail) => {
        const opening = indexedDB.open(name)
        opening.onsuccess = () => settle(opening.result)
        opening.onerror = () => fail(opening.error)
      })
      for (const store of database.objectStoreNames)
        rows.push(
          await new Promise((settle, fail) => {
            const all = database.transaction(store).objectStore(store).getAll()
            all.onsuccess = () => settle(all.result)
            all.onerror = () => fail(all.error)
          }),
        )
      database.close()
    }
    return {
      keys: [...shelves.map(([key]) => key), ...databases.map(({ name = '' }) => name)],
      text: JSON.stringify([shelves, rows]),
    }
  })

const told = (KEPT as readonly KeptRow[]).flatMap(({ where }) =>
  'browser' in where ? where.keys : [],
)

test('[G10] what a guest told is in the browser until the server has it, and no longer', async ({
  job,
}) => {
  const page = await job.open('/counter')
  await tellNeed(page, 'peanut', 'leave-out')
  await itemRow(page, 'Garden chicken').click()

  await test.step('half typed it is kept, so that a reload loses nothing', async () => {
    await expect.poll(async () => (await stored(page)).text).toContain('peanut')
  })

  await test.step('once it is acknowledged there is nothing of it', async () => {
    await sendButton(page).click()
    await ticketIsSent(page, 1)
    await expect.poll(async () => (await stored(page)).text).not.toContain('peanut')
    const { text } = await stored(page)
    for (const word of ['leave-out', 'needs', 'garden-chicken"']) expect(text).not.toContain(word)
  })

  await test.step('every key of storage has its row', async () => {
    const { keys } = await stored(page)
    expect(keys.length).toBeGreaterThan(0)
    expect(keys.filter((key) => !told.includes(key))).toEqual([])
  })
})
