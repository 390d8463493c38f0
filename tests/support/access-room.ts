import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { ROLES, type Role } from '#lib/service/roles.ts'
import { type Access, createAccess } from '#server/access/access.ts'
import { newToken } from '#server/access/devices.ts'
import { createHouse, type House, sha256 } from '#server/access/house.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'

export const LEAD = { name: 'Lead of the house', passphrase: 'lanterns over the pond' }
export const IN_CHARGE = { name: 'Adult in charge', passphrase: 'left of the grill' }
export const STATION = 'alder-hall'

/** A call from this machine. */
export const HERE = { headers: {}, socket: { remoteAddress: '127.0.0.1' } }

/** A call from an address of the network, with a token where one is said. */
export const from = (address: string, token?: string) => ({
  headers: token === undefined ? {} : { authorization: `Bearer ${token}` },
  socket: { remoteAddress: address },
})

/** Those of a file that was opened before have their names already. */
const deviceId = (role: Role, house: House): string => {
  const id = `d-${role}`
  return house.device(id) === null ? id : `${id}-${house.devices().length}`
}

export interface AccessRoom {
  readonly access: Access
  readonly house: House
  /** What proves a device of a role, of this station where none is said. */
  token(role: Role, station?: string): string
  /** As a server ends. */
  close(): void
  /** An adult makes the house; the token of the lead's device. */
  make(): Promise<string>
}

/** A clock of both kinds that a test sets. */
export const testClock = (at = Date.UTC(2026, 2, 2, 17)) => {
  let [wall, monotonic] = [at, 0]
  return {
    now: () => wall,
    monotonic: () => monotonic,
    pass: (ms: number) => {
      wall += ms
      monotonic += ms
    },
    /** Somebody sets the machine's. */
    set: (to: number) => {
      wall = to
    },
  }
}

/** Who may in, over a file of its own, with hashes that cost nothing; a device of each role is joined. */
export const accessRoom = ({
  now = Date.now,
  monotonic = () => 0,
  isDemo = () => false,
  path = join(temporaryFolder(true), 'house.db'),
  stations = [STATION],
}: {
  readonly now?: () => number
  readonly monotonic?: () => number
  readonly isDemo?: () => boolean
  readonly path?: string
  readonly stations?: readonly string[]
} = {}): AccessRoom => {
  const database = openHouseDatabase({ path })
  const access = createAccess({
    database,
    now,
    monotonic,
    here: ({ house: which = 'own', station }, at) => ({
      page: which,
      demoIsOpen: which === 'demo',
      line: null,
      // Any station there is asked for: a test's devices are of stations of their own.
      station: station ?? (at || STATION),
      stations: stations.map((id) => ({ id, name: id, wells: [], isOpen: false })),
      isDemo: isDemo(),
    }),
    cost: CHEAP,
  })
  const house = createHouse(database)
  const joined = (role: Role, station: string, id: string): string => {
    const token = newToken(house.id)
    house.addDevice({
      id,
      token: sha256(token),
      name: role,
      role,
      station,
      adult: null,
      joinedAt: now(),
      seenAt: now(),
      removedAt: null,
    })
    return token
  }
  const tokens = new Map(ROLES.map((role) => [role, joined(role, STATION, deviceId(role, house))]))
  let isOpen = true
  const close = () => {
    if (!isOpen) return
    isOpen = false
    access.close()
    closeDurableDatabase(database)
  }
  onTestFinished(close)
  return {
    access,
    house,
    token: (role, station = STATION) =>
      station === STATION
        ? (tokens.get(role) ?? '')
        : joined(role, station, `d-${role}-${station}`),
    close,
    make: async () => {
      const made = await access.make(HERE, {
        secret: access.secret() ?? '',
        lead: LEAD,
        inCharge: IN_CHARGE,
      })
      if (made.code !== 'done') throw new Error(made.code)
      return made.token
    },
  }
}
