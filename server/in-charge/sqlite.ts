import type { KeptPassphrase, Passphrases } from '#server/in-charge/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

type Columns = [number, number, number, Uint8Array, Uint8Array]

const columnsOf = ({ n, r, p, salt, hash }: KeptPassphrase): Columns => [n, r, p, salt, hash]

/** The passphrase in the house's file. */
export const createSqlitePassphrases = (house: SqliteDatabase): Passphrases => {
  const kept = house.prepare<[], KeptPassphrase>(
    "SELECT n, r, p, salt, hash FROM passphrases WHERE holder = 'in-charge'",
  )
  const add = house.prepare<Columns>(
    `INSERT INTO passphrases (holder, n, r, p, salt, hash)
     VALUES ('in-charge', ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
  )
  const change = house.prepare<[...Columns, Uint8Array]>(
    `UPDATE passphrases SET n = ?, r = ?, p = ?, salt = ?, hash = ?
     WHERE holder = 'in-charge' AND hash = ?`,
  )
  return {
    kept: async () => kept.get() ?? null,
    replace: async (before, by) => {
      const { changes } =
        before === null ? add.run(...columnsOf(by)) : change.run(...columnsOf(by), before.hash)
      return changes === 1
    },
  }
}
