/** The outbox in the browser's own database. Without one (private mode) it lives in memory. */
import type { DBSchema } from 'idb'
import { createMemoryOutbox, type Outbox, type Pending } from '#lib/sync/outbox.ts'

interface Shelves extends DBSchema {
  pending: { key: number; value: Pending & { readonly screen: string } }
}

/** `screen` keeps the outboxes of several screens on one device apart. */
export const openBrowserOutbox = (screen: string): Outbox => {
  const memory = createMemoryOutbox()
  // Fetched beside the first load: nothing waits to be sent before there is a connection.
  const database = import('idb')
    .then(({ openDB }) =>
      openDB<Shelves>('level-scoop', 1, {
        upgrade: (db) => {
          db.createObjectStore('pending', { autoIncrement: true })
        },
      }),
    )
    .catch(() => null)
  const entries = async () => {
    const db = await database
    if (!db) return []
    const [keys, values] = await Promise.all([db.getAllKeys('pending'), db.getAll('pending')])
    return values.flatMap((value, index) => {
      const key = keys[index]
      return value.screen === screen && key !== undefined ? [{ key, value }] : []
    })
  }
  return {
    all: async () => {
      const kept = await entries().catch(() => [])
      return kept.length === 0
        ? memory.all()
        : kept.map(({ value: { screen: _, ...pending } }) => pending)
    },
    put: async (pending) => {
      const db = await database
      if (db) await db.add('pending', { ...pending, screen })
      else await memory.put(pending)
    },
    remove: async (id) => {
      await memory.remove(id)
      const db = await database
      if (!db) return
      for (const { key, value } of await entries())
        if (value.id === id) await db.delete('pending', key)
    },
  }
}
