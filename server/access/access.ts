/** Who may in: the house and its adults, devices and codes, and what each may be asked as. */
import type {
  AccessAnswer,
  AccessNow,
  AskCode,
  ConnectRefusal,
  DeviceList,
  GivenCode,
  JoinByCode,
  MakeHouse,
  MoveDevice,
  OwnDevice,
  SignOnAdult,
} from '#lib/access/http.ts'
import { nameKept } from '#lib/access/passphrase.ts'
import type { Asker } from '#lib/access/rights.ts'
import { mayActAs } from '#lib/access/roles-granted.ts'
import type { Role } from '#lib/service/roles.ts'
import { type AdultChanges, createAdultChanges } from '#server/access/adult-changes.ts'
import { type Adults, createAdults } from '#server/access/adults.ts'
import { createAgeingClock } from '#server/access/ageing-clock.ts'
import { type AskedPage, type AskHere, pageOf } from '#server/access/asked-page.ts'
import { type Caller, tokenOf } from '#server/access/caller.ts'
import { createCodes } from '#server/access/codes.ts'
import { createDevices, type Devices, type NewDevice, newToken } from '#server/access/devices.ts'
import { createHouse, type Device, sha256 } from '#server/access/house.ts'
import type { Cost } from '#server/access/scrypt.ts'
import { createTries, type From, type Tries } from '#server/access/tries.ts'
import { addressOf, isFromHere } from '#server/http/peer.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

/** A proof that is handed to the caller, and what it is for. */
export type Let = AccessAnswer<{ readonly you: OwnDevice; readonly token: string }>

export interface Access extends AdultChanges {
  readonly house: string
  /** What the scripts of whoever owns the data folder say; new at each start. */
  readonly scriptsToken: string
  /** What the terminal shows while nobody made the house; null once somebody did. */
  secret(): string | null
  readonly adults: Pick<Adults, 'hasInCharge' | 'proveInCharge' | 'proveAny'>
  readonly devices: Pick<Devices, 'arrive' | 'onGone' | 'use' | 'standing'>
  readonly tries: Pick<Tries, 'refused' | 'told'>
  now(caller: Caller, page?: AskedPage): AccessNow
  /** The device that calls, while its proof lasts. */
  deviceOf(caller: Caller): Device | null
  from(caller: Caller): From
  /** Whether a handshake is let in as a role, and as what: at the station that it turned to. */
  admit(
    caller: Caller,
    hello: { readonly role: Role; readonly token?: string | undefined } & AskedPage,
  ): Asker | { readonly refusal: ConnectRefusal }
  make(caller: Caller, wanted: MakeHouse): Promise<Let>
  signOn(caller: Caller, wanted: SignOnAdult): Promise<Let>
  join(caller: Caller, wanted: JoinByCode): Promise<Let>
  code(by: Device, wanted: AskCode): AccessAnswer<Omit<GivenCode, 'addresses'>>
  list(by: Device): DeviceList
  remove(device: string): boolean
  move(wanted: MoveDevice): boolean
  signOff(by: Device): void
  close(): void
}

const SCRIPTS_NAME = 'Scripts on this computer'

export const createAccess = (ports: {
  readonly database: SqliteDatabase
  /** Epoch milliseconds. */
  readonly now: () => number
  readonly monotonic?: () => number
  readonly here: AskHere
  readonly cost?: Cost
}): Access => {
  const house = createHouse(ports.database)
  const clock = createAgeingClock(house, ports.now, ports.monotonic)
  const tries = createTries()
  const scriptsToken = newToken(house.id)
  const OWN: AskedPage = { house: 'own' }
  /** Where it works: one that joined before there was a station, or whose station is gone, at the first. */
  const stationOf = (device: Pick<Device, 'station'>): string =>
    ports.here(OWN, device.station).station ?? ''
  const isStation = (id: string): boolean =>
    ports.here(OWN, null).stations.some((one) => one.id === id)
  const started = clock.now()
  const scripts: Device = {
    id: 'd-scripts',
    token: sha256(scriptsToken),
    name: SCRIPTS_NAME,
    role: 'lead',
    station: '',
    adult: null,
    joinedAt: started,
    seenAt: started,
    removedAt: null,
  }
  const devices = createDevices({ house, clock, scripts })
  const { isIn } = devices
  const adults = createAdults({ house, tries, isIn, ...(ports.cost ? { cost: ports.cost } : {}) })
  const codes = createCodes(house, clock, scripts.token)
  let making = false

  const standing = (caller: Caller) => devices.standing(tokenOf(caller, house.id))
  const deviceOf = (caller: Caller): Device | null => {
    const found = standing(caller)
    return found.is === 'proved' ? found.device : null
  }
  const from = (caller: Caller): From => ({
    device: deviceOf(caller)?.id ?? null,
    address: addressOf(caller.socket.remoteAddress),
  })

  const own = (device: Device): OwnDevice => {
    const adult = house.adults().find(({ id }) => id === device.adult)
    return {
      device: device.id,
      name: device.name,
      role: device.role,
      station: stationOf(device),
      adult: adult ? { id: adult.id, name: adult.name } : null,
      until: devices.until(device),
    }
  }

  /** The device that it was before is none any more. */
  const letIn = (caller: Caller, wanted: NewDevice, keep: (device: Device) => boolean): Let => {
    const ready = devices.ready(wanted, stationOf({ station: '' }))
    if (ready === null) return { code: 'too-many' }
    const before = deviceOf(caller)
    if (!keep(ready.device)) return { code: 'not-it' }
    if (before) devices.forget(before.id)
    return { code: 'done', you: own(ready.device), token: ready.token }
  }

  return {
    house: house.id,
    scriptsToken,
    secret: () => (house.isMade() ? null : codes.secret),
    adults,
    devices,
    tries,
    now: (caller, page = {}) => {
      const device = deviceOf(caller)
      if (device) devices.use(device.id)
      const { isDemo, ...here } = ports.here(pageOf(device, page), device?.station ?? null)
      return {
        house: house.isMade() ? 'made' : 'none',
        you: device ? own(device) : null,
        mayWalkDemo: isFromHere(caller) && isDemo,
        ...here,
      }
    },
    deviceOf,
    from,
    admit: (caller, { role, token, ...page }) => {
      const refuse = (refusal: ConnectRefusal) => {
        tries.refused()
        return { refusal }
      }
      const found = devices.standing(token ?? tokenOf(caller, house.id))
      if (found.is === 'unknown')
        return isFromHere(caller) && ports.here(page, null).isDemo
          ? { kind: 'demo', role }
          : refuse('not-joined')
      if (found.is !== 'proved') return refuse(found.is)
      const { device } = found
      if (!mayActAs(device.role, role)) return refuse('role-not-yours')
      devices.use(device.id)
      const at = ports.here(pageOf(device, page), device.station)
      return { kind: 'proved', device: device.id, station: at.station ?? '', role }
    },
    make: async (caller, { secret: typed, lead, inCharge }) => {
      if (house.isMade() || making) return { code: 'made-already' }
      const by = from(caller)
      const again = await tries.take(by)
      if (again !== null) return { code: 'too-many-tries', again }
      if (!codes.isSecret(typed)) {
        tries.wrong(by)
        return { code: 'not-it' }
      }
      await tries.giveBack(by)
      if (house.isMade() || making) return { code: 'made-already' }
      making = true
      try {
        const ready = await adults.ready(
          [
            { ...lead, role: 'lead' },
            { ...inCharge, role: 'in-charge' },
          ],
          true,
        )
        if ('code' in ready) return ready
        const [first] = ready.adults
        const wanted = { name: first?.name ?? '', role: 'lead', adult: first?.id ?? null } as const
        return letIn(caller, wanted, (device) =>
          house.make(clock.now(), ready.adults, ready.renamed, device),
        )
      } finally {
        making = false
      }
    },
    signOn: async (caller, { name, passphrase }) => {
      if (!house.isMade()) return { code: 'no-house' }
      const tried = await adults.prove(name, passphrase, from(caller))
      if (tried.code === 'too-many-tries') return tried
      if (tried.code !== 'right') return { code: 'not-it' }
      const { adult } = tried
      return letIn(caller, { name: adult.name, role: adult.role, adult: adult.id }, (device) => {
        house.addDevice(device)
        return true
      })
    },
    join: async (caller, { code, name: typed }) => {
      if (!house.isMade()) return { code: 'no-house' }
      const by = from(caller)
      const again = await tries.take(by)
      if (again !== null) return { code: 'too-many-tries', again }
      const found = codes.find(code)
      if (found === null) {
        tries.wrong(by)
        return { code: 'not-it' }
      }
      await tries.giveBack(by)
      const name = nameKept(typed)
      if (name === null) return { code: 'no-name' }
      const { role, hash } = found
      return letIn(caller, { name, role, adult: null }, (device) =>
        house.useCode(hash, { ...device, station: found.station }),
      )
    },
    code: (by, { role, station }) => {
      // Nobody is in charge by a code.
      if (role === 'in-charge' || !mayActAs(by.role, role)) return { code: 'not-yours' }
      if (!house.isMade()) return { code: 'no-house' }
      if (station !== undefined && !isStation(station)) return { code: 'not-it' }
      return { code: 'done', ...codes.give(role, station ?? stationOf(by)) }
    },
    list: (by) => ({
      devices: devices.list(by.id).map((one) => ({ ...one, station: stationOf(one) })),
      adults: house.adults().map(({ id, name, role }) => ({ id, name, role })),
      attempts: tries.told(),
    }),
    remove: (device) => devices.remove(device),
    move: ({ device, station }) => isStation(station) && devices.move(device, station),
    ...createAdultChanges({ house, adults, devices, clock, from }),
    signOff: (by) => devices.forget(by.id),
    close: () => devices.close(),
  }
}
