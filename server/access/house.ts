/** What the house's file keeps of who may in. One server owns the file, so all of it is asked at once. */
import { createHash } from 'node:crypto'
import type { Role } from '#lib/service/roles.ts'
import type { KeptPassphrase } from '#server/access/scrypt.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export type AdultRole = 'lead' | 'in-charge'

export interface Adult extends KeptPassphrase {
  readonly id: string
  readonly name: string
  /** What two names share that are taken for one. */
  readonly key: string
  readonly role: AdultRole
}

export interface Device {
  readonly id: string
  /** SHA-256 of its token. */
  readonly token: Buffer
  readonly name: string
  readonly role: Role
  readonly station: string
  readonly adult: string | null
  /** Epoch milliseconds of the clock that never falls, as all times here. */
  readonly joinedAt: number
  readonly seenAt: number
  readonly removedAt: number | null
}

export interface JoinCode {
  readonly hash: Buffer
  readonly role: Role
  readonly station: string
  readonly madeAt: number
}

/** Of a token or a code: both are random enough that no salt is needed. */
export const sha256 = (text: string): Buffer => createHash('sha256').update(text).digest()

const DEVICE =
  'id, token, name, role, station, adult, joined_at AS joinedAt, seen_at AS seenAt, removed_at AS removedAt'

/** All that is kept; every change is durable when it returns. */
export const createHouse = (database: SqliteDatabase) => {
  const one = database.prepare<[], { id: string; madeAt: number | null; floor: number }>(
    'SELECT id, made_at AS madeAt, floor FROM house',
  )
  const made = database.prepare<[number]>('UPDATE house SET made_at = ? WHERE made_at IS NULL')
  const raise = database.prepare<[number]>('UPDATE house SET floor = max(floor, ?)')
  const adults = database.prepare<[], Adult>(
    'SELECT id, name, key, role, n, r, p, salt, hash FROM adults ORDER BY rowid',
  )
  const addAdult = database.prepare<[Adult]>(
    `INSERT INTO adults (id, name, key, role, n, r, p, salt, hash)
     VALUES (@id, @name, @key, @role, @n, @r, @p, @salt, @hash)`,
  )
  const dropAdult = database.prepare<[string]>('DELETE FROM adults WHERE id = ?')
  const rehash = database.prepare<
    [KeptPassphrase & { readonly id: string; readonly before: Uint8Array }]
  >(
    `UPDATE adults SET n = @n, r = @r, p = @p, salt = @salt, hash = @hash
     WHERE id = @id AND hash = @before`,
  )
  const devicesOf = database.prepare<[string], { id: string }>(
    'SELECT id FROM devices WHERE adult = ? AND removed_at IS NULL',
  )
  const dropCodes = database.prepare<[]>('DELETE FROM join_codes')
  const devices = database.prepare<[], Device>(`SELECT ${DEVICE} FROM devices ORDER BY rowid`)
  const byToken = database.prepare<[Buffer], Device>(
    `SELECT ${DEVICE} FROM devices WHERE token = ?`,
  )
  const byId = database.prepare<[string], Device>(`SELECT ${DEVICE} FROM devices WHERE id = ?`)
  const addDevice = database.prepare<[Device]>(
    `INSERT INTO devices (id, token, name, role, station, adult, joined_at, seen_at, removed_at)
     VALUES (@id, @token, @name, @role, @station, @adult, @joinedAt, @seenAt, @removedAt)`,
  )
  const seen = database.prepare<[number, string]>('UPDATE devices SET seen_at = ? WHERE id = ?')
  const remove = database.prepare<[number, string]>(
    'UPDATE devices SET removed_at = ? WHERE id = ? AND removed_at IS NULL',
  )
  const move = database.prepare<[string, string]>(
    'UPDATE devices SET station = ? WHERE id = ? AND removed_at IS NULL',
  )
  const forget = database.prepare<[string]>('DELETE FROM devices WHERE id = ?')
  const codes = database.prepare<[], JoinCode>(
    'SELECT hash, role, station, made_at AS madeAt FROM join_codes ORDER BY made_at DESC',
  )
  const addCode = database.prepare<[JoinCode]>(
    'INSERT INTO join_codes (hash, role, station, made_at) VALUES (@hash, @role, @station, @madeAt)',
  )
  const dropCode = database.prepare<[Buffer]>('DELETE FROM join_codes WHERE hash = ?')
  const house = () => {
    const row = one.get()
    if (!row) throw new Error('the house has no row')
    return row
  }
  return {
    /** Made once; no secret. */
    id: house().id,
    isMade: () => house().madeAt !== null,
    floor: () => house().floor,
    raiseFloor: (at: number): void => {
      raise.run(at)
    },
    /** Adults and all, or nothing. False where somebody made it meanwhile. */
    make: database.transaction(
      (
        at: number,
        first: readonly Adult[],
        renamed: readonly string[],
        device: Device,
      ): boolean => {
        if (made.run(at).changes !== 1) return false
        for (const id of renamed) dropAdult.run(id)
        for (const adult of first) addAdult.run(adult)
        addDevice.run(device)
        return true
      },
    ),
    adults: (): readonly Adult[] => adults.all(),
    addAdult: (adult: Adult): void => {
      addAdult.run(adult)
    },
    /** False where it was changed meanwhile, or the adult was taken out. */
    rehash: ({ id, hash }: Adult, by: KeptPassphrase): boolean =>
      rehash.run({ ...by, id, before: hash }).changes === 1,
    /**
     * The passphrase, every device of that adult but one, and all codes that stand open: or nothing.
     * @returns the devices that are none any more; null as `rehash`
     */
    changePassphrase: database.transaction(
      ({ id, hash }: Adult, by: KeptPassphrase, keep: string | null): readonly string[] | null => {
        if (rehash.run({ ...by, id, before: hash }).changes !== 1) return null
        const gone = devicesOf
          .all(id)
          .map((device) => device.id)
          .filter((device) => device !== keep)
        for (const device of gone) forget.run(device)
        dropCodes.run()
        return gone
      },
    ),
    /** The adult, and all codes that stand open; the devices of theirs, which are removed. */
    removeAdult: database.transaction((id: string, at: number): readonly string[] => {
      const gone = devicesOf.all(id).map((device) => device.id)
      for (const device of gone) remove.run(at, device)
      dropAdult.run(id)
      dropCodes.run()
      return gone
    }),
    devices: (): readonly Device[] => devices.all(),
    deviceByToken: (hash: Buffer): Device | null => byToken.get(hash) ?? null,
    device: (id: string): Device | null => byId.get(id) ?? null,
    addDevice: (device: Device): void => {
      addDevice.run(device)
    },
    seen: (id: string, at: number): void => {
      seen.run(at, id)
    },
    remove: (id: string, at: number): boolean => remove.run(at, id).changes === 1,
    move: (id: string, station: string): boolean => move.run(station, id).changes === 1,
    forget: (id: string): void => {
      forget.run(id)
    },
    /** The newest first. */
    codes: (): readonly JoinCode[] => codes.all(),
    addCode: (code: JoinCode): void => {
      addCode.run(code)
    },
    dropCode: (hash: Buffer): boolean => dropCode.run(hash).changes === 1,
    /** The code is used and its device joins, or neither. */
    useCode: database.transaction((hash: Buffer, device: Device): boolean => {
      if (dropCode.run(hash).changes !== 1) return false
      addDevice.run(device)
      return true
    }),
  }
}

export type House = ReturnType<typeof createHouse>
